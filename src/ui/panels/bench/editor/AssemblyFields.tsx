import { useState } from 'react'
import { hangsOnBareFrame } from '#state/draft.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { TextField } from '#ui/fields/TextField.tsx'
import { COST_OPTIONS, FIXED_TO_OPTIONS } from '#ui/panels/bench/editor/editorWords.ts'
import { useBuilding } from '#ui/panels/bench/editor/useBuilding.ts'

/** What the assembly is called. */
export function NameFields() {
  const { building, patch } = useBuilding()
  const { name, shortName } = building.draft
  return (
    <div className="name-fields">
      <TextField
        name="assembly-name"
        label="Name"
        value={name}
        onCommit={(text) => taken(() => patch({ name: text }))}
      />
      <TextField
        name="assembly-short-name"
        label="Short name"
        value={shortName}
        onCommit={(text) => taken(() => patch({ shortName: text }))}
      />
    </div>
  )
}

function taken(set: () => void): null {
  set()
  return null
}

/** What it stands on, what it costs, and what whoever builds it must know. */
export function AssemblyFields() {
  const { building, patch } = useBuilding()
  const { draft } = building
  const isCeiling = draft.surface === 'ceiling'
  const needsBare = hangsOnBareFrame(draft)
  return (
    <section className="build-facts" aria-label="What it stands on and costs">
      <ChoiceField
        name="fixed-to"
        label="What it is fixed to"
        value={draft.fixedTo}
        options={FIXED_TO_OPTIONS}
        onChoose={(fixedTo) => patch({ fixedTo })}
      />
      <ChoiceField
        name="cost-band"
        label="Cost band"
        value={`${draft.costBand}`}
        options={COST_OPTIONS}
        hint="For comparing: common practice, no source."
        onChoose={(band) => patch({ costBand: COST_BANDS[band] })}
      />
      <div className="build-checks">
        <Check
          name="wool-in-bays"
          text="Wool is put in the open bays of a bare frame"
          isChecked={draft.woolInOpenBays}
          onChange={(woolInOpenBays) => patch({ woolInOpenBays })}
        />
        <Check
          name="needs-bare-frame"
          text={`A lining has to come off first${needsBare ? ': its channel, clips or studs ask for it' : ''}`}
          isChecked={draft.needsBareFrame || needsBare}
          isFixed={needsBare}
          onChange={(needsBareFrame) => patch({ needsBareFrame })}
        />
        {isCeiling && (
          <>
            <Check
              name="loads-joists"
              text="Its weight hangs on the existing joists"
              isChecked={draft.loadsExistingJoists}
              onChange={(loadsExistingJoists) => patch({ loadsExistingJoists })}
            />
            <Check
              name="nested"
              text="Its joists go up into the bays between the existing ones"
              isChecked={draft.nestedInBays ?? false}
              onChange={(nestedInBays) => patch({ nestedInBays })}
            />
          </>
        )}
      </div>
      <CautionLines />
    </section>
  )
}

const COST_BANDS = { 1: 1, 2: 2, 3: 3, 4: 4, 5: 5 } as const

interface CheckProps {
  readonly name: string
  readonly text: string
  readonly isChecked: boolean
  readonly isFixed?: boolean
  readonly onChange: (isChecked: boolean) => void
}

function Check({ name, text, isChecked, isFixed = false, onChange }: CheckProps) {
  return (
    <label className="check-field">
      <input
        type="checkbox"
        name={name}
        checked={isChecked}
        disabled={isFixed}
        onChange={(event) => onChange(event.target.checked)}
      />
      {text}
    </label>
  )
}

function CautionLines() {
  const { building, patch } = useBuilding()
  const { cautionLines, copiedFrom } = building.draft
  const [typed, setTyped] = useState<string | null>(null)
  return (
    <div className="field caution-field">
      <label className="field-label" htmlFor="caution-lines">
        To whoever builds it, one caution a line
      </label>
      <textarea
        id="caution-lines"
        className="field-input"
        rows={3}
        value={typed ?? cautionLines}
        aria-describedby="caution-lines-says"
        onChange={(event) => setTyped(event.target.value)}
        onBlur={() => {
          if (typed !== null && typed !== cautionLines) patch({ cautionLines: typed })
          setTyped(null)
        }}
      />
      <p id="caution-lines-says" className="field-hint">
        {copiedFrom === null
          ? 'Those that its layers always bring stand under "Before it is built".'
          : `Taken over from "${copiedFrom}": check that they still hold.`}
      </p>
    </div>
  )
}

import { stands } from '#analysis/boxes/placed.ts'
import type { SilencerBox } from '#analysis/scheme.ts'
import { changeBox } from '#state/commands/boxes.ts'
import { AngleField } from '#ui/fields/AngleField.tsx'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { boxEntries } from '#ui/panels/bench/air/boxEntries.ts'
import { boxTakes } from '#ui/panels/bench/air/boxWords.ts'
import { EntryFields, Facts, NameField, ThingForm } from '#ui/panels/bench/thing/parts.tsx'
import { useRecordedScheme, useRun } from '#ui/panels/bench/useBench.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

/** A silencer box of the scheme: its size and place, and what it takes of the room. */
export function BoxForm({ box }: { readonly box: SilencerBox }) {
  const scheme = useRecordedScheme()
  const { units } = useShownProject()
  const run = useRun()
  const { result } = useLedger()
  const check = result?.boxes.find(({ id }) => id === box.id)
  const problems = check?.problems.map(({ text }) => text) ?? []
  const fits: readonly [string, string] = ['It fits', problems.length === 0 ? 'yes' : 'no']
  const rows = check && result ? [fits, ...boxTakes(box, result, units)] : []
  return (
    <ThingForm name={box.name} beside={<Facts title={`In ${scheme.name} alone`} rows={rows} problems={problems} />}>
      <NameField id={box.id} value={box.name} command={(name) => changeBox(scheme.id, box.id, { name })} />
      <StandsField box={box} />
      <ServesField box={box} />
      <AngleField
        name={`${box.id}-angle`}
        label="Turned, counter-clockwise"
        value={box.angleDeg}
        onCommit={(angleDeg) => run(changeBox(scheme.id, box.id, { angleDeg }))}
      />
      <EntryFields id={box.id} entries={boxEntries(scheme.id, box)} />
    </ThingForm>
  )
}

interface FieldProps {
  readonly box: SilencerBox
  readonly quiet?: boolean
}

/** On the floor, or hung so that its top meets the ceiling. */
export function StandsField({ box, quiet = false }: FieldProps) {
  const scheme = useRecordedScheme()
  const run = useRun()
  const { result } = useLedger()
  const hung = Math.max(1, Math.floor((result?.ledger.clearHeightMm.lowest ?? 0) - box.heightMm))
  return (
    <ChoiceField<'stands' | 'hangs'>
      name={`${box.id}-stands`}
      label={quiet ? `It stands or hangs, ${box.name}` : 'It'}
      quiet={quiet}
      value={stands({ box }) ? 'stands' : 'hangs'}
      options={[
        { value: 'stands', text: 'Stands on the floor' },
        { value: 'hangs', text: 'Hangs' },
      ]}
      onChoose={(how) => run(changeBox(scheme.id, box.id, { undersideMm: how === 'stands' ? 0 : hung }))}
    />
  )
}

/** The duct a box is for. */
export function ServesField({ box, quiet = false }: FieldProps) {
  const scheme = useRecordedScheme()
  const room = useRoom()
  const run = useRun()
  return (
    <ChoiceField
      name={`${box.id}-duct`}
      label={quiet ? `Serves, ${box.name}` : 'Serves'}
      quiet={quiet}
      value={box.duct ?? ''}
      options={[
        { value: '', text: 'No duct named' },
        ...(room.ducts ?? []).map(({ id, name }) => ({ value: id, text: name })),
      ]}
      onChoose={(duct) => run(changeBox(scheme.id, box.id, { duct: duct === '' ? null : duct }))}
    />
  )
}

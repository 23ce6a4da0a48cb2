import type { Opening, OpeningKind } from '#analysis/room.ts'
import { OPENING_KINDS } from '#analysis/room.ts'
import { changeOpening } from '#state/commands/openings.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { SoundFacts } from '#ui/panels/bench/openings/made/SoundFacts.tsx'
import { SoundFields } from '#ui/panels/bench/openings/made/SoundFields.tsx'
import { WallField } from '#ui/panels/bench/openings/OpeningsView.tsx'
import { checkRows, openingKindWords } from '#ui/panels/bench/openings/openingWords.ts'
import { openingEntries } from '#ui/panels/bench/tables/entries.ts'
import { LeafFields } from '#ui/panels/bench/thing/LeafFields.tsx'
import { EntryFields, Facts, NameField, ThingForm } from '#ui/panels/bench/thing/parts.tsx'
import { openingCaution } from '#ui/panels/bench/thing/thingCautions.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { capital } from '#ui/panels/words.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

/** A door, window or vent: every field, and what linings and floor leave of it. */
export function OpeningForm({ opening }: { readonly opening: Opening }) {
  const room = useRoom()
  const { units } = useShownProject()
  const { result } = useLedger()
  const run = useRun()
  const check = result?.openings.find(({ id }) => id === opening.id)
  const change = (patch: Partial<Omit<Opening, 'id'>>) => run(changeOpening(room.id, opening.id, patch))
  const beside = (
    <>
      <Facts
        title="After linings and floor"
        rows={check ? checkRows(opening, check, units) : []}
        problems={check?.problems.map(({ text }) => text) ?? []}
        caution={openingCaution(opening)}
      />
      <SoundFacts opening={opening} />
    </>
  )
  return (
    <ThingForm name={opening.name} beside={beside}>
      <NameField
        id={opening.id}
        value={opening.name}
        command={(name) => changeOpening(room.id, opening.id, { name })}
      />
      <ChoiceField<OpeningKind>
        name={`${opening.id}-kind`}
        label="It is a"
        value={opening.kind}
        options={OPENING_KINDS.map((kind) => ({ value: kind, text: capital(openingKindWords(kind)) }))}
        onChoose={(kind) => change(kind === 'vent' ? { kind } : { kind, shape: 'rectangular' })}
      />
      <WallField opening={opening} />
      {opening.kind === 'vent' && (
        <ChoiceField<Opening['shape']>
          name={`${opening.id}-shape`}
          label="Shape"
          value={opening.shape}
          options={[
            { value: 'rectangular', text: 'Rectangular' },
            { value: 'round', text: 'Round' },
          ]}
          onChoose={(shape) => change(shape === 'round' ? { shape, heightMm: opening.widthMm } : { shape })}
        />
      )}
      <EntryFields id={opening.id} entries={openingEntries(room, opening)} />
      <LengthField
        name={`${opening.id}-reveal-lining`}
        label="Lining of its reveal"
        value={opening.revealLiningMm}
        unit={units}
        leastMm={0}
        onCommit={(revealLiningMm) => change({ revealLiningMm })}
      />
      {opening.kind === 'door' && <LeafFields opening={opening} change={change} />}
      <SoundFields opening={opening} />
    </ThingForm>
  )
}

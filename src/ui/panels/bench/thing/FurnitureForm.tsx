import type { Furniture, FurnitureKind } from '#analysis/room.ts'
import { FURNITURE_KINDS } from '#analysis/room.ts'
import { changeFurniture } from '#state/commands/furniture.ts'
import { AngleField } from '#ui/fields/AngleField.tsx'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { furnitureKindWords } from '#ui/panels/bench/furniture/fitWords.ts'
import { furnitureEntries } from '#ui/panels/bench/tables/entries.ts'
import { EntryFields, Facts, NameField, ThingForm } from '#ui/panels/bench/thing/parts.tsx'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { capital } from '#ui/panels/words.ts'
import { useRoom } from '#ui/session.ts'

/** A piece of furniture: its footprint, the space asked for round it, and whether it fits. */
export function FurnitureForm({ piece }: { readonly piece: Furniture }) {
  const room = useRoom()
  const run = useRun()
  const { result } = useLedger()
  const check = result?.furniture.find(({ id }) => id === piece.id)
  const problems = check?.problems.map(({ text }) => text) ?? []
  const fits = check && problems.length === 0 ? 'yes, with the space asked for round it' : 'no'
  return (
    <ThingForm
      name={piece.name}
      beside={<Facts title="In the clear room" rows={check ? [['It fits', fits]] : []} problems={problems} />}
    >
      <NameField id={piece.id} value={piece.name} command={(name) => changeFurniture(room.id, piece.id, { name })} />
      <ChoiceField<FurnitureKind>
        name={`${piece.id}-kind`}
        label="It is a"
        value={piece.kind}
        options={FURNITURE_KINDS.map((kind) => ({ value: kind, text: capital(furnitureKindWords(kind)) }))}
        onChoose={(kind) => run(changeFurniture(room.id, piece.id, { kind }))}
      />
      <AngleField
        name={`${piece.id}-angle`}
        label="Turned, counter-clockwise"
        value={piece.angleDeg}
        onCommit={(angleDeg) => run(changeFurniture(room.id, piece.id, { angleDeg }))}
      />
      <EntryFields id={piece.id} entries={furnitureEntries(room, piece)} />
    </ThingForm>
  )
}

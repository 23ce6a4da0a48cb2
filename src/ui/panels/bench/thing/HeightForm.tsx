import { clearHeightAt } from '#analysis/heights/field.ts'
import type { HeightPoint } from '#analysis/room.ts'
import { heightEntries } from '#ui/panels/bench/tables/entries.ts'
import { EntryFields, Facts, ThingForm } from '#ui/panels/bench/thing/parts.tsx'
import { bothHeights } from '#ui/panels/ledger/heightRows.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

/** A measured height, and what is left of it there. */
export function HeightForm({ point }: { readonly point: HeightPoint }) {
  const room = useRoom()
  const { units } = useShownProject()
  const { result } = useLedger()
  const clear = result ? clearHeightAt(result.heights, [point.xMm, point.yMm]) : null
  const beside = (
    <Facts
      title="What is left of it"
      rows={[
        ['Clear height there', clear === null ? 'none, it lies outside the clear room' : bothHeights(clear, units)],
      ]}
      problems={[]}
    />
  )
  return (
    <ThingForm name="Height point" beside={beside}>
      <EntryFields id={point.id} entries={heightEntries(room, point)} />
    </ThingForm>
  )
}

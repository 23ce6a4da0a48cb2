import { airNeed } from '#analysis/air/need.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Duct } from '#analysis/room.ts'
import { addDuct } from '#state/commands/air.ts'
import { usualDuct } from '#state/usualAir.ts'
import { DuctCard } from '#ui/panels/bench/air/DuctCard.tsx'
import { NothingYet, TableVerbs } from '#ui/panels/bench/tables/rows.tsx'
import { useRoom, useSession, useShownProject } from '#ui/session.ts'
import { useKeepsKeyboard } from '#ui/useKeepsKeyboard.ts'

const VERBS: readonly { readonly purpose: Duct['purpose']; readonly text: string }[] = [
  { purpose: 'supply', text: 'Add a supply duct' },
  { purpose: 'return', text: 'Add a return duct' },
  { purpose: 'other', text: 'Add another duct' },
]

/** Every duct that goes out of the room: as it stands, and what the scheme does to it. */
export function Ducts({ result }: { readonly result: SchemeResult }) {
  const { document } = useSession()
  const room = useRoom()
  const { units } = useShownProject()
  const place = useKeepsKeyboard<HTMLElement>('.table-verbs button')
  const need = airNeed(room, result)
  const ducts = room.ducts ?? []
  return (
    <section ref={place} tabIndex={-1} className="air-part" aria-label="Ducts">
      <h3>Ducts</h3>
      <TableVerbs label="Add to the ducts">
        {VERBS.map(({ purpose, text }) => (
          <button
            key={purpose}
            type="button"
            className="row-button"
            onClick={() => document.run(addDuct(room.id, usualDuct(purpose, room, units)))}
          >
            {text}
          </button>
        ))}
      </TableVerbs>
      {ducts.length === 0 && (
        <NothingYet text="No duct goes out of this room yet. Add the ones that are there, or that are to come: sound goes the way the air goes." />
      )}
      {ducts.map((duct) => (
        <DuctCard key={duct.id} duct={duct} result={result} need={need} />
      ))}
    </section>
  )
}

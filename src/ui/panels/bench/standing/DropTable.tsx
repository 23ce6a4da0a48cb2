import { addDrop } from '#state/commands/drops.ts'
import { usualDrop } from '#state/usualThings.ts'
import { dropEntries } from '#ui/panels/bench/tables/entries.ts'
import { squareAround } from '#ui/panels/bench/tables/rectangle.ts'
import { EntryCells, Heads, PlaceCells, Problems, TableVerbs, ThingRow } from '#ui/panels/bench/tables/rows.tsx'
import { useFreePlace } from '#ui/panels/bench/tables/useFreePlace.ts'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { BOX_CAUTION } from '#ui/panels/bench/thing/thingCautions.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useRoom, useShownProject } from '#ui/session.ts'
import { formatLength } from '#units/format.ts'

const HEADS = ['Drop', 'x', 'y', 'Width', 'Depth', 'Underside', 'Box below', 'Box sides', 'Clear under it']

/** Side of a new drop until it is drawn or typed. */
const OFFERED_MM = 500

/** Beams and duct soffits, with their boxing. */
export function DropTable() {
  const room = useRoom()
  const { units } = useShownProject()
  const { result } = useLedger()
  const verbs = useThingVerbs()
  const place = useFreePlace()
  const add = () => verbs.add('drop', addDrop(room.id, usualDrop(squareAround(place(), OFFERED_MM), room)))
  return (
    <>
      {room.drops.length > 0 && (
        <table className="figures cards wide-table">
          <caption>Drops: beams and duct soffits that hang below the ceiling, each with its own box</caption>
          <Heads heads={HEADS} />
          <tbody>
            {room.drops.map((drop) => {
              const { place: box, own } = dropEntries(room, drop)
              const clear = result?.ledger.drops.find(({ id }) => id === drop.id)?.clearHeightMm
              return (
                <ThingRow
                  key={drop.id}
                  thing={{ kind: 'drop', id: drop.id }}
                  name={drop.name}
                  columns={HEADS.length + 1}
                  says={[]}
                >
                  <PlaceCells id={drop.id} of={drop.name} corners={drop.corners.length} place={box} />
                  <EntryCells id={drop.id} of={drop.name} entries={own} />
                  <td className="number" data-label="Clear under it">
                    {clear === undefined ? 'unknown' : formatLength(clear, units)}
                  </td>
                </ThingRow>
              )
            })}
          </tbody>
        </table>
      )}
      {room.drops.length > 0 && <Problems texts={[BOX_CAUTION]} />}
      <TableVerbs label="Add to the drops">
        <button type="button" className="row-button" onClick={add}>
          Add a drop
        </button>
      </TableVerbs>
    </>
  )
}

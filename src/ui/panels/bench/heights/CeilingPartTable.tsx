import { addCeilingPart } from '#state/commands/heights.ts'
import { usualCeilingPart } from '#state/usualThings.ts'
import { ceilingPartEntries } from '#ui/panels/bench/tables/entries.ts'
import { squareAround } from '#ui/panels/bench/tables/rectangle.ts'
import { Heads, PlaceCells, TableVerbs, ThingRow } from '#ui/panels/bench/tables/rows.tsx'
import { useFreePlace } from '#ui/panels/bench/tables/useFreePlace.ts'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { useRoom } from '#ui/session.ts'

const HEADS = ['Ceiling part', 'x', 'y', 'Width', 'Depth', 'Heights']

/** Side of a new ceiling part until it is drawn or typed: about a bay between joists' supports. */
const OFFERED_MM = 1200

/** Parts of the ceiling with heights of their own: steps, raised bays, the other side of a roof. */
export function CeilingPartTable() {
  const room = useRoom()
  const verbs = useThingVerbs()
  const place = useFreePlace()
  const add = () =>
    verbs.add('ceiling-part', addCeilingPart(room.id, usualCeilingPart(squareAround(place(), OFFERED_MM), room)))
  return (
    <>
      {room.ceilingParts.length > 0 && (
        <table className="figures cards wide-table">
          <caption>Ceiling parts; the later one counts where two overlap</caption>
          <Heads heads={HEADS} />
          <tbody>
            {room.ceilingParts.map((part) => (
              <ThingRow
                key={part.id}
                thing={{ kind: 'ceiling-part', id: part.id }}
                name={part.name}
                columns={HEADS.length + 1}
                says={[]}
              >
                <PlaceCells
                  id={part.id}
                  of={part.name}
                  corners={part.corners.length}
                  place={ceilingPartEntries(room, part).place}
                />
                <td className="number" data-label="Heights">
                  {part.heights.length}
                </td>
              </ThingRow>
            ))}
          </tbody>
        </table>
      )}
      <TableVerbs label="Add to the ceiling parts">
        <button type="button" className="row-button" onClick={add}>
          Add a ceiling part
        </button>
      </TableVerbs>
    </>
  )
}

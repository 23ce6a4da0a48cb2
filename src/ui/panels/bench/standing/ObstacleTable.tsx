import { addObstacle } from '#state/commands/obstacles.ts'
import { usualObstacle } from '#state/usualThings.ts'
import { TakenOut } from '#ui/panels/bench/standing/TakenOut.tsx'
import { obstacleEntries } from '#ui/panels/bench/tables/entries.ts'
import { squareAround } from '#ui/panels/bench/tables/rectangle.ts'
import { EntryCells, Heads, PlaceCells, TableVerbs, ThingRow } from '#ui/panels/bench/tables/rows.tsx'
import { useFreePlace } from '#ui/panels/bench/tables/useFreePlace.ts'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { TAKE_OUT_CAUTION } from '#ui/panels/bench/thing/thingCautions.ts'
import { useRecordedScheme } from '#ui/panels/bench/useBench.ts'
import { useRoom } from '#ui/session.ts'

const HEADS = ['Obstacle', 'x', 'y', 'Width', 'Depth', 'Lining', 'Taken out']

/** Side of a new obstacle until it is drawn or typed: a boxed column. */
const OFFERED_MM = 300

/** Columns, piers and breasts: they stand at full height. */
export function ObstacleTable() {
  const room = useRoom()
  const scheme = useRecordedScheme()
  const verbs = useThingVerbs()
  const place = useFreePlace()
  const add = () => verbs.add('obstacle', addObstacle(room.id, usualObstacle(squareAround(place(), OFFERED_MM), room)))
  return (
    <>
      {room.obstacles.length > 0 && (
        <table className="figures cards wide-table">
          <caption>
            Obstacles: columns, piers and breasts at full height. Taken out is said of the scheme {scheme.name} alone.
          </caption>
          <Heads heads={HEADS} />
          <tbody>
            {room.obstacles.map((obstacle) => {
              const { place: box, own } = obstacleEntries(room, obstacle)
              return (
                <ThingRow
                  key={obstacle.id}
                  thing={{ kind: 'obstacle', id: obstacle.id }}
                  name={obstacle.name}
                  columns={HEADS.length + 1}
                  says={scheme.takenOut?.includes(obstacle.id) ? [TAKE_OUT_CAUTION] : []}
                >
                  <PlaceCells id={obstacle.id} of={obstacle.name} corners={obstacle.corners.length} place={box} />
                  <EntryCells id={obstacle.id} of={obstacle.name} entries={own} />
                  <td data-label="Taken out">
                    <TakenOut obstacle={obstacle} quiet />
                  </td>
                </ThingRow>
              )
            })}
          </tbody>
        </table>
      )}
      <TableVerbs label="Add to the obstacles">
        <button type="button" className="row-button" onClick={add}>
          Add an obstacle
        </button>
      </TableVerbs>
    </>
  )
}

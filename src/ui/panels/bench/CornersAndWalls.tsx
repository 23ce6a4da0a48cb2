import { deleteCorner, insertCorner, moveCorner, setRoomHeight } from '#state/commands/outline.ts'
import { setWallLength } from '#state/commands/wall.ts'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { wallLength } from '#ui/panels/bench/wallLength.ts'
import { useRoom, useSession, useShownProject, useView } from '#ui/session.ts'

/** The outline as numbers: everything the plan lets a hand do, by keyboard. */
export function CornersAndWalls() {
  const room = useRoom()
  const { units } = useShownProject()
  const run = useRun()
  const height = room.heights[0]?.heightMm
  return (
    <div className="outline-tables">
      <div className="outline-height">
        {height !== undefined && (
          <LengthField
            name="room-height"
            label="Height of the room, floor to what the tape touched"
            value={height}
            unit={units}
            leastMm={0}
            moreThanLeast
            onCommit={(value) => run(setRoomHeight(room.id, value))}
          />
        )}
        {room.heights.length > 1 && (
          <p className="bench-said">
            {room.heights.length} heights were measured; the lowest is used. Writing one here replaces them.
          </p>
        )}
      </div>
      <WallTable />
      <CornerTable />
    </div>
  )
}

function WallTable() {
  const room = useRoom()
  const { units } = useShownProject()
  const { document, view } = useSession()
  const run = useRun()
  return (
    <table className="figures">
      <caption>Walls</caption>
      <thead>
        <tr>
          <th scope="col">Wall</th>
          <th scope="col">Length</th>
          <th scope="col">Change</th>
        </tr>
      </thead>
      <tbody>
        {room.walls.map((wall, index) => (
          <tr key={wall.id}>
            <th scope="row">
              <button
                type="button"
                className="row-button"
                onClick={() => view.setState({ surfaceIds: [wall.id], cornerId: null })}
              >
                Wall {index + 1}
              </button>
            </th>
            <td>
              <LengthField
                name={`wall-length-${index + 1}`}
                label={`Length of wall ${index + 1}`}
                quiet
                compact
                value={wallLength(room, wall.id)}
                unit={units}
                leastMm={0}
                moreThanLeast
                onCommit={(length) => run(setWallLength(room.id, wall.id, length))}
              />
            </td>
            <td>
              <button
                type="button"
                className="row-button"
                onClick={() => document.run(insertCorner(room.id, wall.id, wallLength(room, wall.id) / 2))}
              >
                Insert corner<span className="visually-hidden"> in the middle of wall {index + 1}</span>
              </button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function CornerTable() {
  const room = useRoom()
  const { units } = useShownProject()
  const { document, view } = useSession()
  const picked = useView((state) => state.cornerId)
  const run = useRun()
  return (
    <table className="figures">
      <caption>Corners, from the plan's origin: x to the right, y up</caption>
      <thead>
        <tr>
          <th scope="col">Corner</th>
          <th scope="col">x</th>
          <th scope="col">y</th>
          <th scope="col">Change</th>
        </tr>
      </thead>
      <tbody>
        {room.corners.map((corner, index) => (
          <tr key={corner.id} aria-current={corner.id === picked ? 'true' : undefined}>
            <th scope="row">
              <button type="button" className="row-button" onClick={() => view.setState({ cornerId: corner.id })}>
                Corner {index + 1}
              </button>
            </th>
            {(['x', 'y'] as const).map((axis) => (
              <td key={axis}>
                <LengthField
                  name={`corner-${index + 1}-${axis}`}
                  label={`Corner ${index + 1}, ${axis}`}
                  quiet
                  compact
                  value={axis === 'x' ? corner.xMm : corner.yMm}
                  unit={units}
                  onCommit={(value) =>
                    run(
                      moveCorner(
                        room.id,
                        corner.id,
                        axis === 'x' ? value : corner.xMm,
                        axis === 'y' ? value : corner.yMm,
                      ),
                    )
                  }
                />
              </td>
            ))}
            <td>
              <button
                type="button"
                className="row-button"
                disabled={room.corners.length <= 3}
                onClick={() => document.run(deleteCorner(room.id, corner.id))}
              >
                Delete<span className="visually-hidden"> corner {index + 1}</span>
              </button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

import type { Room } from '#analysis/room.ts'
import { deleteRoom, renameRoom } from '#state/commands/rooms.ts'
import { TextField } from '#ui/fields/TextField.tsx'
import { useShowRoom } from '#ui/panels/bench/rooms/useShowRoom.ts'
import { Heads } from '#ui/panels/bench/tables/rows.tsx'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { projectResult } from '#ui/panels/ledger/useLedger.ts'
import { bothAreas } from '#ui/panels/words.ts'
import { useRoom, useScheme, useSession, useShownProject } from '#ui/session.ts'

/** Every room with its name and its floor; the one on the page is marked. */
export function RoomTable() {
  const { rooms } = useShownProject()
  return (
    <table className="figures cards">
      <caption className="visually-hidden">Rooms of the project</caption>
      <Heads heads={['Room', 'Name', 'Walls', 'Clear floor']} />
      <tbody>
        {rooms.map((room, index) => (
          <RoomRow key={room.id} room={room} number={index + 1} isOnly={rooms.length === 1} />
        ))}
      </tbody>
    </table>
  )
}

interface RowProps {
  readonly room: Room
  readonly number: number
  readonly isOnly: boolean
}

function RoomRow({ room, number, isOnly }: RowProps) {
  const { document, results } = useSession()
  const project = useShownProject()
  const scheme = useScheme()
  const shown = useRoom().id === room.id
  const show = useShowRoom()
  const run = useRun()
  const result = projectResult(results, project, room.id, scheme.id)
  const clearM2 = result?.ledger.floorAreaM2.clear
  return (
    <tr aria-current={shown ? 'true' : undefined}>
      <th scope="row">
        <button type="button" className="row-button" aria-pressed={shown} onClick={() => show(room.id)}>
          {shown ? 'On the page' : 'Show'}
          <span className="visually-hidden"> {room.name}</span>
        </button>
      </th>
      <td data-label="Name">
        <TextField
          name={`${room.id}-name`}
          label={`Name of room ${number}`}
          quiet
          value={room.name}
          onCommit={(name) => run(renameRoom(room.id, name))}
        />
      </td>
      <td className="number" data-label="Walls">
        {room.walls.length}
      </td>
      <td className="number" data-label="Clear floor">
        {clearM2 === undefined ? 'unknown' : bothAreas(clearM2, project.units)}
      </td>
      <td data-label="" className="row-verbs">
        <button
          type="button"
          className="row-button"
          disabled={isOnly}
          onClick={() => document.run(deleteRoom(room.id))}
        >
          Delete<span className="visually-hidden"> {room.name}</span>
        </button>
      </td>
    </tr>
  )
}

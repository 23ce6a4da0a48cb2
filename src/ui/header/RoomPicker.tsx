import { useShowRoom } from '#ui/panels/bench/rooms/useShowRoom.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

/** The rooms of the project by name, where it has more than one. */
export function RoomPicker() {
  const { rooms } = useShownProject()
  const shown = useRoom()
  const show = useShowRoom()
  if (rooms.length < 2) return null
  return (
    <label className="room-picker">
      Room
      <select name="room" className="room-choice" value={shown.id} onChange={(event) => show(event.target.value)}>
        {rooms.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  )
}

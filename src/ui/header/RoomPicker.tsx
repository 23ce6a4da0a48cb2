import { useShowRoom } from '#ui/panels/bench/rooms/useShowRoom.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

/** The rooms of the project by name, where it has more than one; the one on the page is pressed. */
export function RoomPicker() {
  const { rooms } = useShownProject()
  const shown = useRoom()
  const show = useShowRoom()
  if (rooms.length < 2) return null
  return (
    <fieldset className="room-picker">
      <legend className="visually-hidden">Rooms</legend>
      {rooms.map(({ id, name }) => (
        <button
          key={id}
          type="button"
          className="scheme"
          aria-pressed={id === shown.id}
          title={name}
          onClick={() => show(id)}
        >
          {name}
        </button>
      ))}
    </fieldset>
  )
}

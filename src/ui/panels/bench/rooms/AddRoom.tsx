import { useState } from 'react'
import { boundingBox } from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'
import { freeRoomName } from '#state/commands/roomNames.ts'
import { addRoom } from '#state/commands/rooms.ts'
import { openDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { useShowRoom } from '#ui/panels/bench/rooms/useShowRoom.ts'
import { TableVerbs } from '#ui/panels/bench/tables/rows.tsx'
import { useSession, useShownProject } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

/** Size offered for a further room until the tape says better: 10 ft by 8 ft, 3 m by 2.5 m. */
const OFFERED: Readonly<Record<LengthUnit, readonly [Millimetres, Millimetres]>> = {
  'ft-in': [3048, 2438.4],
  mm: [3000, 2500],
}

/** Between a further room and the others until it is put where it belongs, mm. */
const BESIDE_MM = 1000

/** A further room: by width and length to the right of the others, or drawn. */
export function AddRoom() {
  const session = useSession()
  const shell = useShell()
  const project = useShownProject()
  const show = useShowRoom()
  const { units } = project
  const [[width, length], setSize] = useState(OFFERED[units])
  const add = () => {
    const outcome = session.document.run(
      addRoom(freeRoomName(project, 'Room'), rectangleBeside(project, width, length)),
    )
    const added = outcome.ok ? outcome.value.rooms.at(-1) : undefined
    if (added) show(added.id)
  }
  const draw = () => {
    shell.draw.begin({ kind: 'another-room' })
    openDrawing(session, shell)
  }
  return (
    <TableVerbs label="Add a room">
      <LengthField
        name="room-width"
        label="Width"
        compact
        value={width}
        unit={units}
        leastMm={0}
        moreThanLeast
        onCommit={(value) => {
          setSize([value, length])
          return null
        }}
      />
      <LengthField
        name="room-length"
        label="Length"
        compact
        value={length}
        unit={units}
        leastMm={0}
        moreThanLeast
        onCommit={(value) => {
          setSize([width, value])
          return null
        }}
      />
      <button type="button" className="row-button" onClick={add}>
        Add a room of this size
      </button>
      <button type="button" className="row-button" onClick={draw}>
        Draw another room
      </button>
    </TableVerbs>
  )
}

function rectangleBeside({ rooms }: Project, width: Millimetres, length: Millimetres): readonly Point[] {
  const box = boundingBox(rooms.flatMap(({ corners }) => corners.map(({ xMm, yMm }): Point => [xMm, yMm])))
  const left = (box?.maxX ?? 0) + BESIDE_MM
  const lower = box?.minY ?? 0
  return [
    [left, lower],
    [left + width, lower],
    [left + width, lower + length],
    [left, lower + length],
  ]
}

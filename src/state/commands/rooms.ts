import type { Room } from '#analysis/room.ts'
import { areaOf, intersection } from '#geometry/clip.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { editRoom, idGiver, noRoom } from '#state/commands/edit.ts'
import { withLeadsOf } from '#state/commands/followTargets.ts'
import { drawnRing, NEW_CEILING, NEW_FLOOR, NEW_SURFACE, outlineFrom } from '#state/commands/newOutline.ts'
import { checked } from '#state/commands/outline.ts'
import { ringOf } from '#state/commands/rings.ts'
import { roomNameRefusal } from '#state/commands/roomNames.ts'
import { prunedSchemes } from '#state/commands/wallChoices.ts'
import { fail, ok } from '#units/result.ts'

/** Adds a room drawn beside the others; its heights and what it is made of are those of the first room, to be changed. */
export function addRoom(name: string, points: readonly Point[]): Command {
  return {
    label: 'add room',
    apply: (project) => {
      const refused = roomNameRefusal(project, name, null)
      if (refused) return fail(refused)
      const room = newRoom(project, name.trim(), points)
      const fits = checked(room)
      if (!fits.ok) return fits
      const other = project.rooms.find((candidate) => overlaps(candidate, room))
      if (!other) return ok({ ...project, rooms: [...project.rooms, fits.value] })
      const message = `The new room would lie over ${other.name}; draw it beside it, or cut ${other.name} in two with a partition.`
      return fail({ code: 'overlap', message })
    },
  }
}

export function renameRoom(roomId: string, name: string): Command {
  return {
    label: 'rename room',
    apply: (project) => {
      const refused = roomNameRefusal(project, name, roomId)
      return refused ? fail(refused) : editRoom(project, roomId, (room) => ok({ ...room, name: name.trim() }))
    },
  }
}

/** Takes a room out with its partitions, with what schemes chose for it and with who hears it. */
export function deleteRoom(roomId: string): Command {
  return {
    label: 'delete room',
    apply: (project) => {
      if (!project.rooms.some((room) => room.id === roomId)) return noRoom(roomId)
      if (project.rooms.length === 1) {
        return fail({ code: 'last-room', message: 'A project keeps at least one room; this one stays.' })
      }
      const rooms = project.rooms.filter((room) => room.id !== roomId)
      const partitions = project.partitions.filter(({ sides }) => sides.every((side) => side.room !== roomId))
      const receivers = project.receivers.filter((receiver) => receiver.room !== roomId)
      const schemes = prunedSchemes(project.schemes, rooms)
      return ok(withLeadsOf({ ...project, rooms, partitions, receivers, schemes }))
    },
  }
}

function newRoom(project: Project, name: string, points: readonly Point[]): Room {
  const give = idGiver(project)
  const model = project.rooms.find((room) => room.walls.length > 0)
  const { corners, walls } = outlineFrom(drawnRing(points), model?.walls[0] ?? NEW_SURFACE, give)
  const [first] = model?.heights ?? []
  const at = corners[0] ?? { xMm: 0, yMm: 0 }
  return {
    id: give('room'),
    name,
    corners,
    walls,
    ceiling: { ...(model?.ceiling ?? NEW_CEILING), id: give('ceiling') },
    floor: { ...(model?.floor ?? NEW_FLOOR), id: give('floor') },
    heights: [
      { id: give('height'), xMm: at.xMm, yMm: at.yMm, heightMm: first?.heightMm ?? 2400, floorMm: first?.floorMm ?? 0 },
    ],
    ceilingShape: 'as-measured',
    ceilingParts: [],
    obstacles: [],
    drops: [],
    openings: [],
    furniture: [],
    diagonals: [],
  }
}

/** What rounding may leave between two rooms that share a wall's line, mm2. */
const ROUNDING_MM2 = 1000

function overlaps(one: Room, other: Room): boolean {
  if (one.corners.length < 3) return false
  const shapes = [one, other].map((room) => [{ outline: ringOf(room.corners), holes: [] }])
  return areaOf(intersection(shapes[0] ?? [], shapes[1] ?? [])) > ROUNDING_MM2
}

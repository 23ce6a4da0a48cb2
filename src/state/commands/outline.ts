import type { Corner, Room, Wall } from '#analysis/room.ts'
import { STEPS_PER_MM } from '#geometry/grid.ts'
import { validateOutline } from '#geometry/inset/validate.ts'
import type { Point } from '#geometry/polygon.ts'
import { LARGEST_MM } from '#project/limits.ts'
import type { Command, Refusal } from '#state/command.ts'
import { positive } from '#state/commands/check.ts'
import { editRoom, idGiver } from '#state/commands/edit.ts'
import { footprint } from '#state/commands/furniture.ts'
import { withoutCorner } from '#state/commands/mergeWalls.ts'
import { drawnRing, NEW_SURFACE, outlineFrom } from '#state/commands/newOutline.ts'
import { openingsFit, wallLength } from '#state/commands/openingChecks.ts'
import { partitionAt, partitionEndingAt, staysInLine, tiedCorner, tiedWall } from '#state/commands/partitionSides.ts'
import { meetsRoom, ringOf } from '#state/commands/rings.ts'
import { underCeiling } from '#state/commands/underCeiling.ts'
import type { Millimetres } from '#units/quantity.ts'
import { fail, type Result } from '#units/result.ts'

/** Replaces the outline by one just drawn; the walls are new and carry the first wall's facts where there was one. */
export function drawOutline(roomId: string, points: readonly Point[]): Command {
  return {
    label: 'draw the outline',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const { corners, walls } = outlineFrom(drawnRing(points), room.walls[0] ?? NEW_SURFACE, idGiver(project))
        const furniture = room.furniture.filter((piece) => meetsRoom({ ...room, corners }, ringOf(footprint(piece))))
        return checked({ ...room, corners, walls, furniture, ...NOTHING_MEASURED, ...throughNoWall(room) })
      }),
  }
}

/** What goes with the old outline. */
const NOTHING_MEASURED = { openings: [], obstacles: [], drops: [], ceilingParts: [], diagonals: [] } as const

/** Ducts that go through a wall go with the walls. */
function throughNoWall({ ducts, ceiling, floor }: Room): Pick<Room, 'ducts'> {
  return ducts ? { ducts: ducts.filter(({ surface }) => surface === ceiling.id || surface === floor.id) } : {}
}

/** Starts the outline from width (along x) and length (along y). */
export function startRectangle(roomId: string, width: Millimetres, length: Millimetres): Command {
  const refused = positive('The width', width) ?? positive('The length', length)
  const draw = drawOutline(roomId, [
    [0, 0],
    [width, 0],
    [width, length],
    [0, length],
  ])
  return { label: 'start from width and length', apply: (project) => (refused ? fail(refused) : draw.apply(project)) }
}

/** Moves one corner to a place in the plan; where a partition ends only along that. */
export function moveCorner(roomId: string, cornerId: string, xMm: Millimetres, yMm: Millimetres): Command {
  return {
    label: 'move corner',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const tied = partitionEndingAt(project, room, cornerId)
        if (tied && !staysInLine(room, tied, cornerId, { xMm, yMm })) return fail(tiedCorner(room, tied, cornerId))
        return checked(withCorners(room, (corner) => (corner.id === cornerId ? { ...corner, xMm, yMm } : corner)))
      }),
  }
}

/** Puts a new corner on a wall, at a distance from the wall's first corner; the new wall copies the old one's facts. */
export function insertCorner(roomId: string, wallId: string, along: Millimetres): Command {
  return {
    label: 'insert corner',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const tied = partitionAt(project, roomId, wallId)
        return tied ? fail(tiedWall(room, tied, wallId)) : splitWall(room, wallId, along, idGiver(project))
      }),
  }
}

/** The room with a new corner on a wall; the second piece is a new wall that says what the first does. */
export function splitWall(
  room: Room,
  wallId: string,
  along: Millimetres,
  give: (prefix: string) => string,
): Result<Room, Refusal> {
  const index = room.walls.findIndex((wall) => wall.id === wallId)
  const wall = room.walls[index]
  const start = room.corners[index]
  const end = room.corners[(index + 1) % room.corners.length]
  if (!wall || !start || !end) return fail({ code: 'no-wall', message: `There is no wall "${wallId}" in this room.` })
  const length = Math.hypot(end.xMm - start.xMm, end.yMm - start.yMm)
  if (!(along > 0 && along < length)) {
    return fail({ code: 'off-wall', message: `Wall ${index + 1}: a new corner has to lie between its two ends.` })
  }
  const across = room.openings.find(
    ({ wall: id, fromMm, widthMm }) => id === wallId && fromMm < along && fromMm + widthMm > along,
  )
  if (across) {
    const message = `A new corner there would stand in "${across.name}"; put it beside the opening, or move the opening first.`
    return fail({ code: 'in-an-opening', message })
  }
  const share = along / length
  const corner: Corner = {
    id: give('corner'),
    xMm: start.xMm + share * (end.xMm - start.xMm),
    yMm: start.yMm + share * (end.yMm - start.yMm),
  }
  const second: Wall = { ...wall, id: give('wall'), from: corner.id }
  return checked({
    ...room,
    corners: room.corners.toSpliced(index + 1, 0, corner),
    walls: room.walls.toSpliced(index, 1, { ...wall, to: corner.id }, second),
    openings: room.openings.map((opening) =>
      opening.wall === wallId && opening.fromMm >= along
        ? { ...opening, wall: second.id, fromMm: opening.fromMm - along }
        : opening,
    ),
  })
}

/** Takes a corner out; the wall before it runs on to the next corner. */
export function deleteCorner(roomId: string, cornerId: string): Command {
  return {
    label: 'delete corner',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const index = room.corners.findIndex((corner) => corner.id === cornerId)
        if (index < 0) return fail({ code: 'no-corner', message: `There is no corner "${cornerId}" in this room.` })
        if (room.corners.length <= 3) {
          return fail({ code: 'too-few-corners', message: 'A room needs at least three corners; this one stays.' })
        }
        const tied = partitionEndingAt(project, room, cornerId)
        return tied ? fail(tiedCorner(room, tied, cornerId)) : checked(withoutCorner(room, index))
      }),
  }
}

/** Sets the clear height of the room: floor to what the tape touched. */
export function setRoomHeight(roomId: string, heightMm: Millimetres): Command {
  return {
    label: 'set the height',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const refused = positive('The height', heightMm)
        if (refused) return fail(refused)
        const point = room.heights[0] ?? { id: idGiver(project)('height'), xMm: 0, yMm: 0, heightMm, floorMm: 0 }
        return underCeiling(room, { ...room, heights: [{ ...point, heightMm }] }, project.units)
      }),
  }
}

/** A shorter wall is a corner entered twice: two steps of the grid, mm. */
const SHORTEST_MM = 2 / STEPS_PER_MM

/** A room whose outline has been looked at: refused, with a sentence, where it crosses itself or no longer holds its openings. */
export function checked(room: Room): Result<Room, Refusal> {
  const refusal = validateOutline(room.corners.map((corner) => [corner.xMm, corner.yMm] as const))
  if (refusal) return fail({ code: refusal.code, message: refusal.message })
  const short = room.corners.findIndex((_, i) => wallLength(room.corners, i) < SHORTEST_MM)
  if (short >= 0) {
    const message = `Wall ${short + 1} would have no length left; move it less far, or delete one of its corners.`
    return fail({ code: 'no-length', message })
  }
  const far = room.corners.findIndex(({ xMm, yMm }) => Math.max(Math.abs(xMm), Math.abs(yMm)) > LARGEST_MM)
  if (far < 0) return openingsFit(room)
  const message = `Corner ${far + 1} would lie more than ${LARGEST_MM / 1000} m from the plan's origin; it was kept where it was.`
  return fail({ code: 'too-far', message })
}

function withCorners(room: Room, change: (corner: Corner) => Corner): Room {
  return { ...room, corners: room.corners.map(change) }
}

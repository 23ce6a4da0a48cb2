import type { Room } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'

/** Drops every corner that repeats the one before it, with the wall of no length between them, and says so. */
export function dropRepeatedCorners(project: Project): { project: Project; warnings: readonly string[] } {
  const warnings: string[] = []
  const rooms = project.rooms.map((room) => cleanRoom(room, warnings))
  if (warnings.length === 0) return { project, warnings }
  const gone = new Set(wallIds(project.rooms))
  for (const id of wallIds(rooms)) gone.delete(id)
  const kept = <Said>(said: Readonly<Record<string, Said>>) =>
    Object.fromEntries(Object.entries(said).filter(([id]) => !gone.has(id)))
  const schemes = project.schemes.map((scheme) => ({
    ...scheme,
    choices: kept(scheme.choices),
    ...(scheme.leaks && { leaks: kept(scheme.leaks) }),
    ...(scheme.runsThrough && { runsThrough: withoutGone(scheme.runsThrough, rooms) }),
  }))
  const receivers = project.receivers.map((receiver) => ({
    ...receiver,
    through: receiver.through.filter(({ surface }) => !gone.has(surface)),
  }))
  return { project: { ...project, rooms, receivers, schemes }, warnings }
}

/** Without corners that were dropped, and walls that were. */
function withoutGone(runsThrough: Readonly<Record<string, string>>, rooms: readonly Room[]): Record<string, string> {
  const walls = rooms.flatMap((room) => room.walls)
  return Object.fromEntries(
    Object.entries(runsThrough).filter(([corner, wall]) =>
      walls.some(({ id, from, to }) => id === wall && (from === corner || to === corner)),
    ),
  )
}

function wallIds(rooms: readonly Room[]): readonly string[] {
  return rooms.flatMap((room) => room.walls.map((wall) => wall.id))
}

function cleanRoom(room: Room, warnings: string[]): Room {
  let cleaned = room
  for (let i = 0; i < cleaned.corners.length && cleaned.corners.length > 3; ) {
    if (!isRepeated(cleaned, i) || cleaned.walls.length !== cleaned.corners.length) i += 1
    else {
      warnings.push(
        `${room.name}: wall ${cleaned.walls[i]?.id} has no length (its two corners are the same point); it was dropped.`,
      )
      cleaned = withoutWall(cleaned, i)
    }
  }
  return cleaned
}

function isRepeated(room: Room, index: number): boolean {
  const here = room.corners[index]
  const next = room.corners[(index + 1) % room.corners.length]
  return here !== undefined && next !== undefined && here.xMm === next.xMm && here.yMm === next.yMm
}

/** Takes wall `index` and the corner at its end out of the ring. */
function withoutWall(room: Room, index: number): Room {
  const gone = room.corners[(index + 1) % room.corners.length]
  const kept = room.corners[index]
  const walls = room.walls
    .toSpliced(index, 1)
    .map((wall) => (wall.from === gone?.id && kept ? { ...wall, from: kept.id } : wall))
  const renamed = (id: string) => (id === gone?.id && kept ? kept.id : id)
  return {
    ...room,
    diagonals: room.diagonals.map((diagonal) => ({
      ...diagonal,
      from: renamed(diagonal.from),
      to: renamed(diagonal.to),
    })),
    corners: room.corners.filter((corner) => corner !== gone),
    walls: rotateToFirstCorner(walls, room.corners.filter((corner) => corner !== gone)[0]?.id),
  }
}

function rotateToFirstCorner(walls: Room['walls'], firstCorner: string | undefined): Room['walls'] {
  const start = walls.findIndex((wall) => wall.from === firstCorner)
  return start <= 0 ? walls : [...walls.slice(start), ...walls.slice(0, start)]
}

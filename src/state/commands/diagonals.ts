import type { Corner, Diagonal, PlanPoint, Room } from '#analysis/room.ts'
import type { Command, Refusal } from '#state/command.ts'
import { positive } from '#state/commands/check.ts'
import { editRoom, idGiver, noThing } from '#state/commands/edit.ts'
import { checked } from '#state/commands/outline.ts'
import type { Millimetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Says what was measured from one corner to another across the room; one that was there is replaced. */
export function setDiagonal(roomId: string, from: string, to: string, measuredMm: Millimetres): Command {
  return {
    label: 'set diagonal',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const refused = positive('A diagonal', measuredMm) ?? noDiagonal(room, from, to)
        if (refused) return fail(refused)
        const former = room.diagonals.find((other) => joins(other, from, to))
        if (!former) {
          const added: Diagonal = { id: idGiver(project)('diagonal'), from, to, measuredMm }
          return ok({ ...room, diagonals: [...room.diagonals, added] })
        }
        const diagonals = room.diagonals.map((other) => (other === former ? { ...former, measuredMm } : other))
        return ok({ ...room, diagonals })
      }),
  }
}

export function deleteDiagonal(roomId: string, id: string): Command {
  return {
    label: 'delete diagonal',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const diagonals = room.diagonals.filter((diagonal) => diagonal.id !== id)
        return diagonals.length === room.diagonals.length ? noThing('diagonal', id) : ok({ ...room, diagonals })
      }),
  }
}

function joins(diagonal: Diagonal, one: string, other: string): boolean {
  return (diagonal.from === one && diagonal.to === other) || (diagonal.from === other && diagonal.to === one)
}

function noDiagonal(room: Room, from: string, to: string): Refusal | null {
  const [one, other] = [from, to].map((id) => room.corners.findIndex((corner) => corner.id === id))
  if (one === undefined || other === undefined || one < 0 || other < 0) {
    return { code: 'no-corner', message: `A diagonal needs two corners of ${room.name}; choose them.` }
  }
  const steps = Math.abs(one - other)
  if (steps > 1 && steps < room.corners.length - 1) return null
  const message = 'A diagonal runs across the room between two corners that no wall joins; choose two others.'
  return { code: 'not-across', message }
}

/** Moves corners of a four-cornered room so that its walls keep their lengths and the diagonal its measured one. */
export function squareToDiagonal(roomId: string, id: string): Command {
  return {
    label: 'square to the diagonal',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const diagonal = room.diagonals.find((candidate) => candidate.id === id)
        if (!diagonal) return noThing('diagonal', id)
        const tied = project.partitions.find(({ sides }) => sides.some((side) => side.room === roomId))
        if (tied) {
          const message = `${room.name} shares "${tied.name}" with another room, so it cannot be turned; move its walls instead.`
          return fail({ code: 'partition', message })
        }
        return squared(room, diagonal)
      }),
  }
}

function squared(room: Room, { from, to, measuredMm }: Diagonal): Result<Room, Refusal> {
  const [p0, p1, p2, p3] = room.corners
  if (!p0 || !p1 || !p2 || !p3 || room.corners.length !== 4) {
    const message = `${room.name} has ${room.corners.length} corners; only four walls and a diagonal settle a shape. Move corners by hand.`
    return fail({ code: 'not-four-corners', message })
  }
  const lengths = [gap(p0, p1), gap(p1, p2), gap(p2, p3), gap(p3, p0)] as const
  // Wall 1 stays where it is; the diagonal hangs the third or the fourth corner on it, and that one the other.
  const fromFirst = from === p0.id || to === p0.id
  const third = fromFirst ? apex([p0, p1, p2], measuredMm, lengths[1]) : null
  const fourth = fromFirst ? null : apex([p0, p1, p3], lengths[3], measuredMm)
  const newThird = third ?? (fourth && apex([p1, fourth, p2], lengths[1], lengths[2]))
  const newFourth = fourth ?? (third && apex([p0, third, p3], lengths[3], lengths[2]))
  if (!newThird || !newFourth) {
    const message = 'No shape has these four wall lengths and this diagonal; measure the longest of them again.'
    return fail({ code: 'no-shape', message })
  }
  return checked({ ...room, corners: [p0, p1, newThird, newFourth] })
}

function gap(one: PlanPoint, other: PlanPoint): Millimetres {
  return Math.hypot(other.xMm - one.xMm, other.yMm - one.yMm)
}

/** A corner moved to stand at two distances from two others, on the side of their line it was on; null: they do not reach. */
function apex(
  [one, other, corner]: readonly [Corner, Corner, Corner],
  fromOne: Millimetres,
  fromOther: Millimetres,
): Corner | null {
  const base = gap(one, other)
  const along = (fromOne ** 2 - fromOther ** 2 + base ** 2) / (2 * base)
  const height2 = fromOne ** 2 - along ** 2
  if (!(base > 0 && height2 > 0)) return null
  const [ux, uy] = [(other.xMm - one.xMm) / base, (other.yMm - one.yMm) / base]
  const isLeft = ux * (corner.yMm - one.yMm) - uy * (corner.xMm - one.xMm) > 0
  const across = (isLeft ? 1 : -1) * Math.sqrt(height2)
  return { ...corner, xMm: one.xMm + ux * along - uy * across, yMm: one.yMm + uy * along + ux * across }
}

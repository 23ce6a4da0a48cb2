import type { Corner, Opening, Room } from '#analysis/room.ts'
import type { Refusal } from '#state/command.ts'
import { lowestCeilingAlong } from '#state/commands/ceilingOver.ts'
import { named, notNegative, notTooDeep, positive } from '#state/commands/check.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** What rounding may leave of a length, mm. */
const ROUNDING_MM = 1e-3

/** Why an opening cannot be where it is said to be: sizes, its wall's ends, the ceiling, its neighbours. */
export function openingRefusal(room: Room, opening: Opening, units: LengthUnit): Refusal | null {
  return (
    sizes(opening) ?? along(room, opening, units) ?? openingAboveCeiling(room, opening, units) ?? beside(room, opening)
  )
}

function sizes(opening: Opening): Refusal | null {
  const name = `"${opening.name}"`
  return (
    named('An opening', opening.name) ??
    positive(`${name}: its width`, opening.widthMm) ??
    positive(`${name}: its height`, opening.heightMm) ??
    notNegative(`${name}: its sill`, opening.sillMm) ??
    notTooDeep(`${name}: the boards in its reveal`, opening.revealLiningMm) ??
    notNegative(`${name}: its distance from the wall's first corner`, opening.fromMm)
  )
}

function along(room: Room, opening: Opening, units: LengthUnit): Refusal | null {
  const index = room.walls.findIndex((wall) => wall.id === opening.wall)
  if (index < 0) {
    return { code: 'no-wall', message: `"${opening.name}" needs a wall of ${room.name}; choose one.` }
  }
  const length = wallLength(room.corners, index)
  const show = (mm: Millimetres) => formatLength(mm, units)
  if (opening.widthMm > length + ROUNDING_MM) {
    const message = `"${opening.name}" would be ${show(opening.widthMm)} wide and Wall ${index + 1} is ${show(length)} long; make it narrower.`
    return { code: 'opening-too-wide', message }
  }
  if (opening.fromMm + opening.widthMm <= length + ROUNDING_MM) return null
  const message = `"${opening.name}" would reach ${show(opening.fromMm + opening.widthMm - length)} past the end of Wall ${index + 1}; it can begin at ${show(length - opening.widthMm)} at the most.`
  return { code: 'past-the-wall', message }
}

function openingAboveCeiling(room: Room, opening: Opening, units: LengthUnit): Refusal | null {
  const [from, to] = wallEnds(
    room,
    room.walls.findIndex((wall) => wall.id === opening.wall),
  )
  if (!from || !to) return null
  const ceiling = lowestCeilingAlong(room, from, to, opening.fromMm, opening.fromMm + opening.widthMm)
  if (ceiling === null || opening.sillMm + opening.heightMm <= ceiling + ROUNDING_MM) return null
  const message = `"${opening.name}" would reach up to ${formatLength(opening.sillMm + opening.heightMm, units)} and the ceiling there is at ${formatLength(ceiling, units)}; make it lower.`
  return { code: 'above-the-ceiling', message }
}

function beside(room: Room, opening: Opening): Refusal | null {
  const other = room.openings.find((candidate) => candidate.id !== opening.id && overlap(candidate, opening))
  if (!other) return null
  const index = room.walls.findIndex((wall) => wall.id === opening.wall)
  const message = `"${opening.name}" would overlap "${other.name}" in Wall ${index + 1}; move it along the wall or make it narrower.`
  return { code: 'overlap', message }
}

/** Whether two openings take the same piece of a wall; one above the other do not. */
function overlap(one: Opening, other: Opening): boolean {
  const share = (a: Millimetres, aSize: Millimetres, b: Millimetres, bSize: Millimetres) =>
    Math.min(a + aSize, b + bSize) - Math.max(a, b) > ROUNDING_MM
  return (
    one.wall === other.wall &&
    share(one.fromMm, one.widthMm, other.fromMm, other.widthMm) &&
    share(one.sillMm, one.heightMm, other.sillMm, other.heightMm)
  )
}

/** What the file allows an opening to reach past its wall's end, mm. */
const ALLOWED_PAST_MM = 1

/** A room after walls have moved: refused where an opening no longer fits into its wall, which stays where it was measured. */
export function openingsFit(room: Room): Result<Room, Refusal> {
  for (const opening of room.openings) {
    const index = room.walls.findIndex((wall) => wall.id === opening.wall)
    const length = wallLength(room.corners, index)
    if (opening.fromMm >= 0 && opening.fromMm + opening.widthMm <= length + ALLOWED_PAST_MM) continue
    if (opening.widthMm > length + ALLOWED_PAST_MM) {
      const message = `Wall ${index + 1} would be shorter than its opening "${opening.name}" is wide; it was kept as it was.`
      return fail({ code: 'opening-too-wide', message })
    }
    const cut = opening.fromMm < 0 ? 'begin after its opening' : 'end before its opening'
    const message = `Wall ${index + 1} would ${cut} "${opening.name}" does; move the opening first.`
    return fail({ code: 'past-the-wall', message })
  }
  return ok(room)
}

export function wallLength(corners: readonly Corner[], index: number): Millimetres {
  const from = corners[index]
  const to = corners[(index + 1) % corners.length]
  return from && to ? Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) : 0
}

function wallEnds(room: Room, index: number): readonly [Corner | undefined, Corner | undefined] {
  return [room.corners[index], room.corners[(index + 1) % room.corners.length]]
}

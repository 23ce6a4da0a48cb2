import { named } from '#analysis/paths/names.ts'
import type { Duct, Room } from '#analysis/room.ts'
import type { Hole, Leaks } from '#analysis/scheme.ts'
import { outlineArea, perimeter } from '#geometry/outline.ts'
import { MOST_HOLES } from '#project/limits.ts'
import type { Refusal } from '#state/command.ts'
import { highestCeilingOver } from '#state/commands/ceilingOver.ts'
import { named as nameRefusal, notTooDeep, positive } from '#state/commands/check.ts'
import { surfaceLabel } from '#state/commands/edit.ts'
import { wallLength } from '#state/commands/openingChecks.ts'
import { ringOf } from '#state/commands/rings.ts'
import { formatArea } from '#units/format.ts'
import type { LengthUnit, Millimetres, SquareMetres } from '#units/quantity.ts'

/** Why a surface cannot stand open as it was said to: sizes, counts, and more open than there is of it. */
export function leaksRefusal(room: Room, surfaceId: string, leaks: Leaks, units: LengthUnit): Refusal | null {
  const { gapMm, holes } = leaks
  const gap = gapMm === undefined ? null : notTooDeep('The gap', gapMm)
  return gap ?? holes.map(holeRefusal).find((refused) => refused !== null) ?? largerThan(room, surfaceId, leaks, units)
}

function holeRefusal({ name, diameterMm, count }: Hole): Refusal | null {
  const size = `"${name}": its diameter`
  const refused = nameRefusal('A hole', name) ?? positive(size, diameterMm) ?? notTooDeep(size, diameterMm)
  if (refused) return refused
  if (Number.isInteger(count) && count > 0 && count <= MOST_HOLES) return null
  const message = `"${name}": how many there are has to be a whole number from 1 to ${MOST_HOLES}; it was kept as it was.`
  return { code: 'bad-count', message }
}

/** A refusal where gaps and holes together are more than the surface they are in. */
function largerThan(room: Room, surfaceId: string, { gapMm, holes }: Leaks, units: LengthUnit): Refusal | null {
  const size = sizeOf(room, surfaceId)
  if (size === null) return null
  const area = (m2: SquareMetres) => formatArea(m2, units)
  const label = named(surfaceLabel(room, surfaceId))
  const gapM2 = ((gapMm ?? 0) * size.perimeterMm) / 1e6
  if (gapM2 >= size.areaM2) {
    const message = `The gap round ${label} would be ${area(gapM2)} and all of ${label} is ${area(size.areaM2)}; type a narrower one.`
    return { code: 'gap-too-large', message }
  }
  const open = holes.map(({ diameterMm, count }) => (count * (Math.PI / 4) * diameterMm ** 2) / 1e6)
  const openM2 = open.reduce((sum, m2) => sum + m2, gapM2)
  if (openM2 < size.areaM2) return null
  const largest = holes[open.indexOf(Math.max(...open))]
  const message = `"${largest?.name}": with it ${area(openM2)} would be open and all of ${label} is ${area(size.areaM2)}; type a smaller diameter, or fewer of them.`
  return { code: 'holes-too-large', message }
}

/** A refusal where a duct is as large as the surface it goes through. */
export function ductTooLarge(room: Room, duct: Duct, units: LengthUnit): Refusal | null {
  const size = sizeOf(room, duct.surface)
  const round = duct.shape === 'round'
  const clearM2 = (round ? (Math.PI / 4) * duct.widthMm ** 2 : duct.widthMm * duct.heightMm) / 1e6
  if (size === null || clearM2 < size.areaM2) return null
  const label = named(surfaceLabel(room, duct.surface))
  const message = `"${duct.name}" would be ${formatArea(clearM2, units)} clear and all of ${label} is ${formatArea(size.areaM2, units)}; type a smaller ${round ? 'diameter' : 'width or height'}.`
  return { code: 'duct-too-large', message }
}

/** Size of a surface as it was measured, its openings in it; null: how high it is was not. */
function sizeOf(
  room: Room,
  surfaceId: string,
): { readonly areaM2: SquareMetres; readonly perimeterMm: Millimetres } | null {
  const index = room.walls.findIndex(({ id }) => id === surfaceId)
  const ring = ringOf(room.corners)
  if (index < 0) return { areaM2: Math.abs(outlineArea(ring)) / 1e6, perimeterMm: perimeter(ring) }
  const ends = [index, (index + 1) % room.corners.length].flatMap((at) => room.corners[at] ?? [])
  const height = highestCeilingOver(room, ends)
  if (height === null) return null
  const length = wallLength(room.corners, index)
  return { areaM2: (length * height) / 1e6, perimeterMm: 2 * (length + height) }
}

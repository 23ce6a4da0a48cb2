import { formatLength, formatSurfaceMass } from '#units/format.ts'
import type { KilogramsPerSquareMetre, Millimetres } from '#units/quantity.ts'

/** A length for a sentence that must be read in any office: 2134 mm (7'-0"). */
export function bothLengths(length: Millimetres): string {
  return `${formatLength(length, 'mm')} (${formatLength(length, 'ft-in')})`
}

/** A weight over an area for a sentence: 22.3 kg/m² (4.6 lb/ft²). */
export function bothSurfaceMasses(mass: KilogramsPerSquareMetre): string {
  return `${formatSurfaceMass(mass, 'mm')} (${formatSurfaceMass(mass, 'ft-in')})`
}

/** Wall 1, Wall 2 and Wall 4. */
export function list(labels: readonly string[]): string {
  if (labels.length < 2) return labels.join('')
  return `${labels.slice(0, -1).join(', ')} and ${labels.at(-1)}`
}

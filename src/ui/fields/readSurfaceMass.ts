import { formatSurfaceMass, KG_M2_PER_LB_FT2 } from '#units/format.ts'
import type { KilogramsPerSquareMetre, LengthUnit } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A weight over an area in both units, the reader's first: 2.2 lb/ft² · 10.7 kg/m². */
export function bothMasses(mass: KilogramsPerSquareMetre, unit: LengthUnit): string {
  return `${formatSurfaceMass(mass, unit)} · ${formatSurfaceMass(mass, unit === 'mm' ? 'ft-in' : 'mm')}`
}

const WRITTEN = /^([-+]?(?:\d+\.?\d*|\.\d+))\s*(kg\/m(?:2|²)|lb\/ft(?:2|²)|psf)?$/i

/**
 * A typed weight over an area; a bare number is in the project's unit.
 * @returns kg/m2, or a sentence saying what is wrong and what now
 */
export function readSurfaceMass(text: string, unit: LengthUnit): Result<KilogramsPerSquareMetre, string> {
  const [, number, named] = WRITTEN.exec(text.trim()) ?? []
  if (number === undefined) return fail('A weight is a number with kg/m2 or lb/ft2 after it.')
  const isImperial = named === undefined ? unit === 'ft-in' : !named.toLowerCase().startsWith('kg')
  return ok(isImperial ? Number(number) * KG_M2_PER_LB_FT2 : Number(number))
}

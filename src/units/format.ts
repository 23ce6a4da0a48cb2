import {
  CUBIC_FEET_PER_M3,
  type CubicMetres,
  type LengthUnit,
  type Millimetres,
  MM_PER_INCH,
  SQUARE_FEET_PER_M2,
  type SquareMetres,
} from '#units/quantity.ts'

/** Finest fraction of an inch shown on drawings. */
const SHOWN_FRACTION = 16
/** @source exact: 0.45359237 kg, international pound of 1959, memory */
const KG_PER_POUND = 0.45359237
/** One lb/ft² in kg/m²: 4.88. */
export const KG_M2_PER_LB_FT2 = KG_PER_POUND * SQUARE_FEET_PER_M2

/**
 * A length in the reader's units: 11'-6 1/4", 5 3/4", or 3512 mm.
 * @param fraction  finest part of an inch, a power of two up to 64
 */
export function formatLength(length: Millimetres, unit: LengthUnit, fraction = SHOWN_FRACTION): string {
  if (unit === 'mm') return `${plainZero(Math.round(length))} mm`
  return formatFeetInches(length, fraction)
}

/** A length whose tenths matter (a board, a gap): 15.9 mm, or the same fractions as formatLength. */
export function formatThickness(length: Millimetres, unit: LengthUnit): string {
  if (unit === 'mm') return `${plainZero(Math.round(length * 10) / 10)} mm`
  return formatFeetInches(length, 64)
}

function formatFeetInches(length: Millimetres, fraction: number): string {
  const parts = Math.round((Math.abs(length) / MM_PER_INCH) * fraction)
  const sign = length < 0 && parts > 0 ? '-' : ''
  const feet = Math.floor(parts / (12 * fraction))
  const rest = parts - feet * 12 * fraction
  const whole = Math.floor(rest / fraction)
  const text = inchText(whole, rest - whole * fraction, fraction, feet > 0)
  return feet > 0 ? `${sign}${feet}'-${text}"` : `${sign}${text}"`
}

function inchText(whole: number, parts: number, fraction: number, afterFeet: boolean): string {
  if (parts === 0) return `${whole}`
  let top = parts
  let bottom = fraction
  while (top % 2 === 0) {
    top /= 2
    bottom /= 2
  }
  return whole === 0 && !afterFeet ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`
}

/** An area: 224.9 ft² or 20.89 m². */
export function formatArea(area: SquareMetres, unit: LengthUnit): string {
  return unit === 'mm' ? `${fixed(area, 2)} m²` : `${fixed(area * SQUARE_FEET_PER_M2, 1)} ft²`
}

/** A volume: 1,867 ft³ or 52.87 m³. */
export function formatVolume(volume: CubicMetres, unit: LengthUnit): string {
  return unit === 'mm' ? `${fixed(volume, 2)} m³` : `${thousands(volume * CUBIC_FEET_PER_M3)} ft³`
}

/** A weight: 1,940 kg or 4,277 lb. */
export function formatMass(mass: number, unit: LengthUnit): string {
  return unit === 'mm' ? `${thousands(mass)} kg` : `${thousands(mass / KG_PER_POUND)} lb`
}

/** Weight over an area: 22.3 kg/m² or 4.6 lb/ft². */
export function formatSurfaceMass(mass: number, unit: LengthUnit): string {
  return unit === 'mm' ? `${fixed(mass, 1)} kg/m²` : `${fixed(mass / KG_M2_PER_LB_FT2, 1)} lb/ft²`
}

/** A share: 93.7 %. */
export function formatPercent(percent: number): string {
  return `${fixed(percent, 1)} %`
}

/** A number with a fixed count of decimals and no negative zero. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? (0).toFixed(decimals) : text
}

function thousands(value: number): string {
  return String(plainZero(Math.round(value))).replace(/\B(?=(\d{3})+$)/g, ',')
}

function plainZero(value: number): number {
  return value === 0 ? 0 : value
}

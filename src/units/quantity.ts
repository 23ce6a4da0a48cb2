/**
 * Numbers that carry their unit in the type. A plain number may be used where a quantity is asked for
 * (results of arithmetic are plain), but one quantity is never accepted in place of another.
 */
export type Quantity<Unit extends string> = number & { readonly unit?: Unit }

export type Millimetres = Quantity<'mm'>
export type SquareMetres = Quantity<'m2'>
export type CubicMetres = Quantity<'m3'>
export type Hertz = Quantity<'Hz'>
export type Decibels = Quantity<'dB'>
export type KilogramsPerSquareMetre = Quantity<'kg/m2'>

/** The units a reader can choose for lengths. */
export type LengthUnit = 'mm' | 'ft-in'

/** International inch of 1959, exact. @source International yard and pound agreement, 1959, memory */
export const MM_PER_INCH = 25.4
export const MM_PER_FOOT = 12 * MM_PER_INCH
/** From the exact foot. */
export const SQUARE_FEET_PER_M2 = 1e6 / (MM_PER_FOOT * MM_PER_FOOT)
/** From the exact foot. */
export const CUBIC_FEET_PER_M3 = 1e9 / MM_PER_FOOT ** 3

/** Inches as millimetres, exact for multiples of 1/64 in in binary floating point to 1e-12. */
export function inches(value: number): Millimetres {
  return value * MM_PER_INCH
}

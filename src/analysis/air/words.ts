import { formatArea } from '#units/format.ts'
import { type LengthUnit, type Millimetres, MM_PER_FOOT, MM_PER_INCH, type SquareMetres } from '#units/quantity.ts'

/** One cubic foot a minute in L/s, exact: 0.4719. */
const L_PER_S_PER_CFM = MM_PER_FOOT ** 3 / 1e6 / 60
const FPM_PER_M_S = (60 * 1000) / MM_PER_FOOT

/** An airflow for a sentence that must be read in any office: 26.3 L/s (56 cfm). */
export function bothAirflows(lPerS: number): string {
  return `${lPerS.toFixed(1)} L/s (${Math.round(lPerS / L_PER_S_PER_CFM)} cfm)`
}

/** A floor area: 20.90 m² (225.0 ft²). */
export function bothFloorAreas(areaM2: SquareMetres): string {
  return `${formatArea(areaM2, 'mm')} (${formatArea(areaM2, 'ft-in')})`
}

/** A velocity of air: 1.4 m/s (276 ft/min). */
export function bothVelocities(metresPerS: number): string {
  return `${metresPerS.toFixed(1)} m/s (${Math.round(metresPerS * FPM_PER_M_S)} ft/min)`
}

/** Sizes ducts are sold in, near enough: steps of 10 mm or of an inch. @source common practice, no source */
const STEPS_MM: Readonly<Record<LengthUnit, Millimetres>> = { mm: 10, 'ft-in': MM_PER_INCH }

/** The next size of a round duct that is at least as wide. */
export function nextDuctSize(diameterMm: Millimetres, units: LengthUnit): Millimetres {
  const step = STEPS_MM[units]
  return step * Math.ceil(diameterMm / step - 1e-9)
}

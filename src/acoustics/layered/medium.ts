import table from '#acoustics/data/cavity.json' with { type: 'json' }
import { AIR_BULK_MODULUS, AIR_DENSITY, AIR_IMPEDANCE } from '#acoustics/layered/air.ts'
import type { Tone } from '#acoustics/layered/tone.ts'

/** What one medium is at one frequency: squared wavenumber (1/m2) and impedance times wavenumber (Pa s/m2). */
export interface Medium {
  k2Re: number
  k2Im: number
  zkRe: number
  zkIm: number
}

/** Lossy air into `out`: the impedance stays real, the wavenumber becomes k (1 - j l / 2). */
export function setAir(out: Medium, { k }: Tone, loss: number): void {
  const half = loss / 2
  out.k2Re = k * k * (1 - half * half)
  out.k2Im = -2 * k * k * half
  out.zkRe = AIR_IMPEDANCE * k
  out.zkIm = -AIR_IMPEDANCE * k * half
}

/** Effective density of wool at the frequency it was last asked for, kg/m3: every cavity of a wall asks the same one. */
const WOOL = { hz: 0, densityRe: 0, densityIm: 0 }

/**
 * Mineral wool as a limp porous medium.
 * @source Miki (1990) and Panneton (2007), both memory
 */
function setWool(hz: number): void {
  const { miki, fill } = table
  const ratio = hz / fill.flowResistivityPaSM2
  const zPower = ratio ** miki.impedanceExponent
  const kPower = ratio ** miki.wavenumberExponent
  const zRe = 1 + miki.impedanceRe * zPower
  const zIm = -miki.impedanceIm * zPower
  const kRe = 1 + miki.wavenumberRe * kPower
  const kIm = -miki.wavenumberIm * kPower
  // Effective density of a rigid frame: Zc kp / w = rho0 x (relative impedance x relative wavenumber).
  const rigidRe = AIR_DENSITY * (zRe * kRe - zIm * kIm)
  const rigidIm = AIR_DENSITY * (zRe * kIm + zIm * kRe)
  const total = fill.bulkDensityKgM3 + AIR_DENSITY
  const upRe = total * rigidRe - AIR_DENSITY ** 2
  const upIm = total * rigidIm
  const downRe = total + rigidRe - 2 * AIR_DENSITY
  const norm = downRe * downRe + rigidIm * rigidIm
  WOOL.densityRe = (upRe * downRe + upIm * rigidIm) / norm
  WOOL.densityIm = (upIm * downRe - upRe * rigidIm) / norm
  WOOL.hz = hz
}

/**
 * Mineral wool into `out`, with an adiabatic bulk modulus (Miki's own isothermal one puts framed walls 1 dB too high):
 * kp^2 = w^2 rho / (K0 (1 + j l)).
 * @source adiabatic modulus our own choice
 */
export function setFill(out: Medium, { hz, omega }: Tone, loss: number): void {
  if (WOOL.hz !== hz) setWool(hz)
  const { densityRe, densityIm } = WOOL
  const scale = (omega * omega) / (AIR_BULK_MODULUS * (1 + loss * loss))
  out.k2Re = scale * (densityRe + loss * densityIm)
  out.k2Im = scale * (densityIm - loss * densityRe)
  out.zkRe = omega * densityRe
  out.zkIm = omega * densityIm
}

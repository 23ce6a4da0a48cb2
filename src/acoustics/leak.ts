import { type BandCurve, EXACT_CENTRES_HZ } from '#acoustics/bands.ts'
import { lossOfFraction } from '#acoustics/curve.ts'
import { SOUND_SPEED } from '#acoustics/layered/air.ts'
import type { Hertz, Millimetres } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** A long open gap right through: between two planes, or along an edge where a plane meets it at a right angle. */
export interface Slit {
  readonly widthMm: Millimetres
  /** The way sound goes through it. */
  readonly depthMm: Millimetres
  readonly place: 'middle' | 'edge'
}

/** A round hole right through. */
export interface RoundHole {
  readonly diameterMm: Millimetres
  readonly depthMm: Millimetres
}

/** Diffuse sound from all sides. @source Gomperts and Kihlman, Acustica 18 (1967), as recalled in METHOD section 9, memory */
const DIFFUSE = 8
/** Euler's constant. */
const EULER = 0.57722
/** k w up to which the slit formula holds; wider against the wave an opening lets through what meets it. @source as above */
const NARROW = 1
/** What a flanged opening carries along at its two ends, in radii of it. @source slug of air, any acoustics textbook, memory */
const BOTH_ENDS = 1.7
/** Where inside a third of an octave its transmission is read, as parts of its centre; so a sharp resonance is not stepped over. */
const WITHIN_THIRD: readonly number[] = [-2, -1, 0, 1, 2].map((step) => 10 ** (step / 50))

function waveNumber(hz: Hertz): number {
  return (2 * Math.PI * hz) / SOUND_SPEED
}

/**
 * Energy that comes through a slit over what meets its open area, uncapped: resonances of the air in it exceed 1.
 * Holds for k w < 1; friction of the air is left out, so below about 1 mm of width it says too much, the safe side.
 * @source Gomperts and Kihlman, Acustica 18 (1967), diffuse incidence, memory
 */
export function slitTransmission(hz: Hertz, { widthMm, depthMm, place }: Slit): number {
  invariant(widthMm > 0 && depthMm >= 0, 'a slit is open')
  const K = waveNumber(hz) * (widthMm / 1000)
  const L = depthMm / widthMm
  const e = (Math.log(8 / K) - EULER) / Math.PI
  const n = place === 'middle' ? 1 : 0.5
  const ends = Math.cos(K * e) ** 2
  const within = K * (L + 2 * e)
  const radiated = (K ** 2 / (2 * n ** 2)) * (1 + Math.cos(K * L) * Math.cos(within))
  return (DIFFUSE * K * ends) / (2 * n ** 2 * (Math.sin(within) ** 2 / ends + radiated))
}

/**
 * Energy that comes through a round hole over what meets its open area, uncapped. At low frequencies it is a slug of air,
 * 4 a^2/(t + 1.7 a)^2; higher up the hole is a short tube with resonances. Holds for k a < 1.
 * @source slug of air: METHOD section 9, own; the tube: own derivation with the flanged piston's resistance (k a)^2/2
 */
export function holeTransmission(hz: Hertz, { diameterMm, depthMm }: RoundHole): number {
  invariant(diameterMm > 0 && depthMm >= 0, 'a hole is open')
  const radiusM = diameterMm / 2000
  const ka = waveNumber(hz) * radiusM
  const within = waveNumber(hz) * (depthMm / 1000 + BOTH_ENDS * radiusM)
  return (4 * ka ** 2) / (Math.sin(within) ** 2 + ka ** 4 * Math.cos(within) ** 2)
}

/** Loss over BANDS_HZ of what lets `transmission` through, at least 0 dB: never worse than its open area. */
function cappedLoss(transmission: (hz: Hertz) => number, holdsUpToHz: Hertz): BandCurve {
  return EXACT_CENTRES_HZ.map((centre) => {
    if (centre >= holdsUpToHz) return 0
    const parts = WITHIN_THIRD.map((part) => transmission(centre * part))
    const mean = parts.reduce((sum, part) => sum + part, 0) / parts.length
    return mean >= 1 ? 0 : lossOfFraction(mean)
  })
}

/** Transmission loss of a slit for its own open area, dB over BANDS_HZ, >= 0; 0 where it is wide against the wave. */
export function slitLoss(slit: Slit): BandCurve {
  const holdsUpToHz = (NARROW * SOUND_SPEED) / (2 * Math.PI * (slit.widthMm / 1000))
  return cappedLoss((hz) => slitTransmission(hz, slit), holdsUpToHz)
}

/** Transmission loss of a round hole for its own open area, dB over BANDS_HZ, >= 0; 0 where it is wide against the wave. */
export function holeLoss(hole: RoundHole): BandCurve {
  const holdsUpToHz = (NARROW * SOUND_SPEED) / (2 * Math.PI * (hole.diameterMm / 2000))
  return cappedLoss((hz) => holeTransmission(hz, hole), holdsUpToHz)
}

import { EXACT_CENTRES_HZ, OCTAVES_HZ } from '#acoustics/bands.ts'
import { type Spectrum, toLoop, toSpectrum } from '#acoustics/listen/fourier.ts'
import type { Decibels, Hertz } from '#units/quantity.ts'

/** dB over OCTAVES_HZ; null: nothing is known of the octave, so it is left silent. */
export type OctaveGains = readonly (Decibels | null)[]

/** How far past the edge of a known octave sound still fades, octaves: a hard edge would ring. @source our own choice */
const FADE_OCTAVES = 0.1
/** Half an octave on both sides of its centre. */
const HALF_OCTAVE = 0.5

/** log2 of the exact centres of the octaves. */
const CENTRES = OCTAVES_HZ.map((_, octave) => Math.log2(EXACT_CENTRES_HZ[3 * octave + 1]!))

/** Places in OCTAVES_HZ where something is known. */
function knownOctaves(gains: OctaveGains): readonly number[] {
  return gains.flatMap((gain, octave) => (gain === null ? [] : [octave]))
}

/** 1 within a known octave, falling to 0 just outside. */
function fade(logHz: number, known: readonly number[]): number {
  const outside = Math.min(...known.map((octave) => Math.abs(logHz - CENTRES[octave]!) - HALF_OCTAVE))
  if (outside <= 0) return 1
  return outside >= FADE_OCTAVES ? 0 : Math.cos((Math.PI * outside) / (2 * FADE_OCTAVES)) ** 2
}

/** How one bin follows the gains: `share` of the way from one known octave to the next, faded outside them. */
interface Place {
  readonly low: number
  readonly high: number
  readonly share: number
  readonly faded: number
}

/** A bin's place: straight in dB from known centre to known centre over log frequency, held beyond the outermost. */
function placeOf(logHz: number, known: readonly number[]): Place {
  const faded = fade(logHz, known)
  const above = known.findIndex((octave) => CENTRES[octave]! > logHz)
  const high = known.at(above)!
  if (above <= 0) return { low: high, high, share: 0, faded }
  const low = known[above - 1]!
  return { low, high, share: (logHz - CENTRES[low]!) / (CENTRES[high]! - CENTRES[low]!), faded }
}

/** Places of the lower half of a spectrum that sound at all: from bin 1 to where the last known octave has faded. */
function placesOf(gains: OctaveGains, bins: number, binHz: Hertz): readonly Place[] {
  const known = knownOctaves(gains)
  if (known.length === 0) return []
  const top = 2 ** (CENTRES[known.at(-1)!]! + HALF_OCTAVE + FADE_OCTAVES) / binHz
  return Array.from({ length: Math.min(bins, Math.ceil(top)) - 1 }, (_, i) =>
    placeOf(Math.log2((i + 1) * binHz), known),
  )
}

/** dB as an exponent of e, for amplitudes. */
const NEPER = Math.LN10 / 20

/** Factors on the lower half of a spectrum, bin by bin; 0 where nothing is known. */
function factorsOf(gains: OctaveGains, places: readonly Place[], bins: number): Float64Array {
  const factors = new Float64Array(bins)
  for (const [i, { low, high, share, faded }] of places.entries()) {
    const gain = (1 - share) * (gains[low] ?? 0) + share * (gains[high] ?? 0)
    factors[i + 1] = faded === 0 ? 0 : faded * Math.exp(NEPER * gain)
  }
  return factors
}

/** The spectrum with every bin and its mirror image multiplied. */
function multiplied({ re, im }: Spectrum, factors: Float64Array): Spectrum {
  const { length } = re
  const factor = (bin: number) => factors[Math.min(bin, length - bin)]!
  return { re: re.map((value, bin) => value * factor(bin)), im: im.map((value, bin) => value * factor(bin)) }
}

/** Energy of each octave, as the mean square it has in the loop; `factors` on the bins. */
function octaveEnergies({ re, im }: Spectrum, binHz: Hertz, factors: Float64Array): readonly number[] {
  return CENTRES.map((centre) => {
    const from = Math.ceil(2 ** (centre - HALF_OCTAVE) / binHz)
    const to = Math.min(re.length / 2, Math.ceil(2 ** (centre + HALF_OCTAVE) / binHz))
    let sum = 0
    for (let bin = from; bin < to; bin += 1) sum += (re[bin]! ** 2 + im[bin]! ** 2) * factors[bin]! ** 2
    return (2 * sum) / re.length ** 2
  })
}

/** Levels of a loop by octave, dB over OCTAVES_HZ, 0 dB being a root mean square of 1; -Infinity where it is silent. */
export function octaveLevelsOf(loop: ArrayLike<number>, sampleRateHz: Hertz): readonly Decibels[] {
  const all = new Float64Array(loop.length / 2 + 1).fill(1)
  return octaveEnergies(toSpectrum(loop), sampleRateHz / loop.length, all).map((energy) => 10 * Math.log10(energy))
}

/**
 * A loop with gains by octave: exact at the centres, straight in dB between them; no shift in phase, and seamless.
 * @param loop  a power of two of samples
 */
export function filterOctaves(loop: ArrayLike<number>, sampleRateHz: Hertz, gains: OctaveGains): Float64Array {
  const spectrum = toSpectrum(loop)
  const bins = loop.length / 2 + 1
  const places = placesOf(gains, bins, sampleRateHz / loop.length)
  return toLoop(multiplied(spectrum, factorsOf(gains, places, bins)))
}

/** Rounds of correction, since what is raised at one centre raises its neighbours too; measured in the tests to 0.1 dB. */
const ROUNDS = 12

/**
 * A loop brought to levels by octave, whatever it had before; octaves it has nothing in stay silent.
 * @param levels  dB over OCTAVES_HZ, 0 dB being a root mean square of 1; null: silent
 */
export function shapeOctaves(loop: ArrayLike<number>, sampleRateHz: Hertz, levels: OctaveGains): Float64Array {
  const spectrum = toSpectrum(loop)
  const binHz = sampleRateHz / loop.length
  const bins = loop.length / 2 + 1
  const places = placesOf(levels, bins, binHz)
  let gains: OctaveGains = levels.map((level) => (level === null ? null : 0))
  for (let round = 0; round < ROUNDS; round += 1) {
    const energies = octaveEnergies(spectrum, binHz, factorsOf(gains, places, bins))
    gains = gains.map((gain, octave) => {
      const level = levels[octave] ?? null
      const energy = energies[octave]!
      return gain === null || level === null || energy === 0 ? gain : gain + level - 10 * Math.log10(energy)
    })
  }
  return toLoop(multiplied(spectrum, factorsOf(gains, places, bins)))
}

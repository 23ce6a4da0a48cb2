import { type BandCurve, EXACT_CENTRES_HZ, OCTAVES_HZ } from '#acoustics/bands.ts'
import table from '#acoustics/data/pair.json' with { type: 'json' }
import { thirdsOfOctaves } from '#acoustics/octaves.ts'
import type { Decibels, Hertz, Millimetres, SquareMetres } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** The small room between two leaves. */
export interface Between {
  /** Of one leaf. */
  readonly areaM2: SquareMetres
  readonly gapMm: Millimetres
  /** Equivalent absorption area of the small room, one for all bands or over BANDS_HZ. */
  readonly absorptionM2: SquareMetres | readonly SquareMetres[]
}

/** What the small room between two leaves is bounded by. */
export interface Lobby {
  /** Of one leaf. */
  readonly areaM2: SquareMetres
  readonly perimeterMm: Millimetres
  readonly gapMm: Millimetres
  /** Whether the reveal is lined with something absorbent. */
  readonly isLined: boolean
}

/** Equivalent absorption area between two leaves, m2 over BANDS_HZ: both leaves hard, the reveal as it is. @source data/pair.json, memory */
export function lobbyAbsorption({ areaM2, perimeterMm, gapMm, isLined }: Lobby): readonly SquareMetres[] {
  const revealM2 = (perimeterMm / 1000) * (gapMm / 1000)
  const { lined, hard } = table.absorption
  const byOctave: readonly SquareMetres[] = OCTAVES_HZ.map((_, octave) => {
    const reveal = isLined ? lined[octave]! : hard[octave]!
    return 2 * areaM2 * hard[octave]! + revealM2 * reveal
  })
  return thirdsOfOctaves(byOctave)
}

/** Shallow air couples the leaves as a spring; null where it is deep enough against the wave not to. */
function stiffAir(hz: Hertz, gapMm: Millimetres): Decibels | null {
  const depthM = gapMm / 1000
  if (hz * depthM >= table.stiffAir.belowHzMetres) return null
  return 20 * Math.log10(hz * depthM) - table.stiffAir.termDb
}

/**
 * Transmission loss of two leaves on frames of their own with a small room between, dB over BANDS_HZ: the lower of what a
 * room between them gives, TL1 + TL2 - 10 lg(S/A), and what a spring of air gives; never below the better leaf alone. The
 * dip where both leaves swing on that spring is not followed below the better leaf.
 * @param first, second  dB over BANDS_HZ, for the same area
 * @source rooms in series, own; Sharp 1978, memory
 */
export function pairLoss(first: BandCurve, second: BandCurve, between: Between): BandCurve {
  const { areaM2, gapMm, absorptionM2 } = between
  invariant(areaM2 > 0 && gapMm > 0, 'two leaves have an area and air between')
  return EXACT_CENTRES_HZ.map((hz, band) => {
    const absorption = typeof absorptionM2 === 'number' ? absorptionM2 : absorptionM2[band]!
    invariant(absorption > 0, 'a room between two leaves absorbs')
    const room = -10 * Math.log10(areaM2 / absorption)
    const coupled = Math.min(room, stiffAir(hz, gapMm) ?? room)
    return Math.max(first[band]! + second[band]! + coupled, first[band]!, second[band]!)
  })
}

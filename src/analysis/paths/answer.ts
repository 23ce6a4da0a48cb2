import type { BandCurve, OctaveCurve, OctaveValues } from '#acoustics/bands.ts'
import type { Note } from '#analysis/results.ts'
import type { Limit } from '#analysis/target.ts'
import type { Decibels, Hertz, Millimetres, SquareMetres } from '#units/quantity.ts'

export type PathKind = 'surface' | 'opening' | 'leak' | 'duct' | 'flanking'

/** What stands behind a path's loss. */
export type PathBasis = 'calculated' | 'published' | 'assumed' | 'typed'

/** One way sound gets from the source to a receiver. */
export interface Path {
  /** The surface's or opening's own id; of others a prefix and that id: `leak:wall-1`, `seal:opening-2`, `hole:...`, `duct:...`, `flanking:wall-2`. */
  readonly id: string
  readonly kind: PathKind
  /** As a sentence names it: "Wall 2", "Side door", "The gap round Wall 2". */
  readonly label: string
  /** Id of the surface, opening or duct that would have to be changed. */
  readonly element: string
  readonly areaM2: SquareMetres
  /** dB over BANDS_HZ, for its own area. */
  readonly lossDb: BandCurve
  /** One standard deviation by band, dB. */
  readonly sdDb: BandCurve
  readonly basis: PathBasis
  /** Outdoors: how far from it the receiver is. */
  readonly distanceMm: Millimetres | null
  /** Outdoors: turned away or screened by so much. */
  readonly screenedDb: Decibels
  readonly notes: readonly Note[]
}

/** A way of which nothing is known: no sum that leaves it out may be called an answer. */
export interface UnknownPath {
  readonly id: string
  readonly kind: PathKind
  readonly label: string
  readonly element: string
  /** A full sentence: what is missing and where to say it. */
  readonly why: string
}

/** A path in the sum. */
export interface PathShare {
  readonly path: Path
  /** Of everything transmitted, A-weighted where the limit is dBA, C-weighted for dBC, else over all octaves as they are; 0..1. */
  readonly share: number
  /** At the band that decides; 0..1. */
  readonly shareAtWorstBand: number
  /** What the margin would gain in the middle of its range were this path closed altogether; null: the margin is not known. */
  readonly gainIfClosedDb: Decibels | null
  /** Level it brings to the receiver by itself, dB over OCTAVES_HZ; null: no source level there. */
  readonly levelsDb: readonly (Decibels | null)[]
}

export type Verdict = 'meets-on-paper' | 'likely' | 'open' | 'does-not-meet' | 'not-known'

/** The composite of everything between the room and the receiver, as a laboratory would rate it and as it is expected on site. */
export interface SiteLoss {
  /** STC of the surfaces and openings alone. */
  readonly laboratoryStc: Decibels
  /** The same with leaks, ducts and flanking. */
  readonly expectedStc: Decibels
}

/** What a receiver hears, against its limit. */
export interface ReceiverAnswer {
  readonly receiverId: string
  readonly name: string
  readonly limit: Limit
  /** dB over OCTAVES_HZ, at the receiver, middle of the range; null: no source level there, or a path is unknown. */
  readonly levelsDb: readonly (Decibels | null)[]
  /** Upper end of the 95 % range of the same. */
  readonly levelsHigh95Db: readonly (Decibels | null)[]
  /** Lower end of the same. */
  readonly levelsLow95Db: readonly (Decibels | null)[]
  /** With the 5 dB for beat or tone taken off; null for a dBA or dBC limit. */
  readonly limitDb: OctaveCurve | null
  /** dBA or dBC limit, beat taken off; null for a curve. */
  readonly limitOverallDb: Decibels | null
  readonly levelA: Decibels | null
  readonly levelC: Decibels | null
  /** Level in the source room or at the wall outside, dB over OCTAVES_HZ. */
  readonly sourceDb: readonly (Decibels | null)[]
  /** Predicted level difference, dB over BANDS_HZ; null where not known. */
  readonly noiseReductionDb: BandCurve | null
  /** The same in octaves, for what is measured on site. */
  readonly differenceDb: OctaveValues
  /** E336 by E413; null outdoors, where it is not defined, and where a path is unknown. */
  readonly nic: Decibels | null
  /** Limit less level at the tightest band (for dBA and dBC overall); null: not known. */
  readonly marginDb: Decibels | null
  readonly marginLow95Db: Decibels | null
  readonly marginHigh95Db: Decibels | null
  /** Tightest octave; null for a dBA or dBC limit. */
  readonly worstBandHz: Hertz | null
  /** Octave that contributes most to a dBA or dBC level; null for a curve. */
  readonly dominantBandHz: Hertz | null
  readonly verdict: Verdict
  /** "meets on paper", "likely, could be 8 dB worse", "open", "does not meet", "not known". */
  readonly verdictWords: string
  /** Greatest share at the deciding band first. */
  readonly paths: readonly PathShare[]
  readonly unknown: readonly UnknownPath[]
  readonly siteLoss: SiteLoss | null
  /** "The side door carries 94 % of what the bedroom hears at 125 Hz; the walls could all be lighter." */
  readonly sentence: string
  /** Lowest resonance of the build-ups it goes through, Hz; null: none known. */
  readonly lowestResonanceHz: Hertz | null
  /** Full sentences, the one on structure-borne sound among them where it applies. */
  readonly notes: readonly Note[]
}

import type { BandCurve, OctaveKey } from '#acoustics/bands.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import type { OpeningKind } from '#assemblies/opening.ts'
import type { SealLeak } from '#assemblies/openingSeals.ts'
import type { Decibels, Millimetres, SquareMetres } from '#units/quantity.ts'

/** Something true but doubtful about an opening's figure, as a full sentence. */
export interface OpeningNote {
  readonly code: string
  readonly text: string
}

/** Where an opening is and how large. */
export interface OpeningContext {
  readonly catalogue: Pick<Catalogue, 'openingTypes'>
  readonly kind: OpeningKind
  readonly areaM2: SquareMetres
  /** All the way round, and down the middle where two leaves meet. */
  readonly perimeterMm: Millimetres
  readonly widthMm: Millimetres
  readonly heightMm: Millimetres
  /** The wall it stands in, as built in the scheme; null: it has no rating. */
  readonly wall: { readonly lossDb: BandCurve; readonly sdDb: BandCurve } | null
  /** Between the two doors as drawn, where the second hangs in the new lining; null: none is drawn. */
  readonly pairGapMm: Millimetres | null
}

/** What goes through an opening as it is made. */
export interface OpeningSound {
  /** dB over BANDS_HZ, for the opening's area; without the gap of worn seals, which is a part of its own. */
  readonly lossDb: BandCurve
  /** One standard deviation by band. */
  readonly sdDb: BandCurve
  readonly basis: 'calculated' | 'published' | 'assumed'
  /** What the gap of its seals lets through, beside the leaf; null: none. Of a pair the gaps are in `lossDb`. */
  readonly seal: SealLeak | null
  readonly notes: readonly OpeningNote[]
  /** With the gap of its seals; null: it stops nothing. */
  readonly stc: Decibels | null
  /** 95 %, whole STC rounded outward; null: it stops nothing. */
  readonly likely: readonly [Decibels, Decibels] | null
  /** Octaves that were extended by a rule, not printed or calculated. */
  readonly assumedOctaves: readonly OctaveKey[]
  /** "34 (26 to 34), <source>"; null: nothing is in print for it. */
  readonly publishedWords: string | null
}

import type { OctaveKey } from '#acoustics/bands.ts'
import type { Source } from '#assemblies/assembly.ts'
import type { Layer } from '#assemblies/layer.ts'
import type { Decibels, KilogramsPerSquareMetre, Millimetres } from '#units/quantity.ts'

export type OpeningKind = 'door' | 'window' | 'vehicle-door' | 'vent'
export const OPENING_KINDS: readonly OpeningKind[] = ['door', 'window', 'vehicle-door', 'vent']

/** How tight the seals of a leaf or sash are: as tested, worn, or cut off above the floor. */
export type SealCondition = 'good' | 'worn' | 'undercut'
export const SEAL_CONDITIONS: readonly SealCondition[] = ['good', 'worn', 'undercut']

/** One leaf with its seals. */
export interface LeafMade {
  /** Id of an opening type. */
  readonly type: string
  readonly seal: SealCondition
}

/** One pane of glass. */
export interface Pane {
  readonly thicknessMm: Millimetres
  readonly isLaminated: boolean
}

/** Two panes in frames of their own with air between. */
export interface PanePair {
  readonly outer: Pane
  readonly gapMm: Millimetres
  readonly inner: Pane
}

/** What fills an opening. */
export interface OpeningMade extends LeafMade {
  /** Of a pair of doors, the second one; absent: the same again. */
  readonly second?: LeafMade | undefined
  /** Of a pair of panes; absent: the type's usual ones. */
  readonly panes?: PanePair | undefined
}

/** How the transmission loss of an opening type is known. */
export type OpeningLoss =
  /** Octaves in print. */
  | {
      readonly kind: 'octaves'
      readonly lossDb: Readonly<Partial<Record<OctaveKey, Decibels | undefined>>>
      readonly sdDb: Decibels
    }
  /** One number only: the curve is laid along the rating's contour, which is an assumption. */
  | { readonly kind: 'contour'; readonly stc: Decibels; readonly sdDb: Decibels }
  /** Calculated from its layers, outside to room. */
  | { readonly kind: 'layers'; readonly layers: readonly Layer[] }
  /** Calculated from two panes and the air between. */
  | { readonly kind: 'panes'; readonly usual: PanePair }
  /** Two leaves, each with seals, and the small room between them. */
  | {
      readonly kind: 'pair'
      readonly first: string
      readonly second: string
      readonly gapMm: Millimetres
      readonly isLined: boolean
    }
  /** A duct goes through it and the rest is closed as the wall is: what the duct lets through is the duct's own path. */
  | { readonly kind: 'duct' }
  /** Closed as the wall is, and weaker by so much. */
  | { readonly kind: 'as-the-wall'; readonly lessDb: Decibels; readonly sdDb: Decibels }
  /** Nothing in it. */
  | { readonly kind: 'open' }

/**
 * What closes round a leaf or sash: seals, in good order when it was tested; nothing, and the printed figure has the usual
 * cracks in it; or it does not open at all.
 */
export type SealsOf = 'tested' | 'cracks-included' | 'none'

/** A door, window, vehicle door or vent that can stand in an opening. */
export interface OpeningType {
  readonly id: string
  /** As a builder would say it, one line. */
  readonly name: string
  /** Two or three words, for a chart or the plan. */
  readonly shortName: string
  readonly kinds: readonly OpeningKind[]
  readonly loss: OpeningLoss
  readonly seals: SealsOf
  /** Of one leaf, or of all panes and layers; null: not known. */
  readonly massKgM2: KilogramsPerSquareMetre | null
  /** The leaf itself, for the depth of slits and of lobbies. */
  readonly thicknessMm: Millimetres
  /** Single number in print for it, with the lowest and highest where several differ. */
  readonly published: {
    readonly stc: Decibels
    readonly range?: readonly [Decibels, Decibels] | undefined
    readonly source: Source
  } | null
  /** 1 cheapest to 5. @source common practice, no source */
  readonly costBand: 1 | 2 | 3 | 4 | 5
  readonly cautions: readonly string[]
  readonly source: Source
}

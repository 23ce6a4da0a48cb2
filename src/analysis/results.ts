import type { Prediction } from '#acoustics/layered/predict.ts'
import type { RatingEvidence } from '#acoustics/rating.ts'
import type { SurfaceKind } from '#assemblies/assembly.ts'
import type { Layer } from '#assemblies/layer.ts'
import type { PublishedValue } from '#assemblies/published/match.ts'
import type { Inset } from '#geometry/inset/insetRoom.ts'
import type { Polygon } from '#geometry/polygon.ts'
import type { CubicMetres, Decibels, KilogramsPerSquareMetre, Millimetres, SquareMetres } from '#units/quantity.ts'

/** True but doubtful, or worth a look: shown beside the number it belongs to, and exported. */
export interface Note {
  readonly code: string
  /** A full sentence. */
  readonly text: string
}

/** Predicted isolation of one surface, existing construction and assembly as one layered system. */
export interface SurfaceRating {
  readonly stc: Decibels
  readonly stcNo8dbRule: Decibels
  readonly rw: Decibels
  readonly c: Decibels
  readonly ctr: Decibels
  /** Half width of the 95 % likely range of STC. */
  readonly plusMinus95: Decibels
  /** Likely range in whole STC, lower and upper end. */
  readonly likely: readonly [Decibels, Decibels]
  /** Contour, shortfalls and limiting band behind every single number, all of the curve as shown. */
  readonly evidence: RatingEvidence
  readonly prediction: Prediction
  /** STC of the calculation alone, before the shift towards published measurements. */
  readonly physicsStc: Decibels
  /** Laboratory values in print for exactly this build-up; empty: none. */
  readonly published: readonly PublishedValue[]
}

/** One wall, the ceiling or the floor under a scheme. */
export interface SurfaceResult {
  readonly id: string
  readonly kind: SurfaceKind
  /** Wall 1, Wall 2 ..., Ceiling, Floor. */
  readonly label: string
  /** Catalogue id or as-is. */
  readonly assembly: string
  readonly assemblyName: string
  readonly removeLining: boolean
  readonly hasLining: boolean
  /** Taken from the line that was drawn, out-of-true allowance included; negative: the face moves outward. */
  readonly netDepthMm: Millimetres
  readonly depthFromFaceMm: Millimetres
  readonly depthFromStructureMm: Millimetres
  /** Plan area its strip takes, less what removing the lining gains; 0 for ceiling and floor. */
  readonly areaLostM2: SquareMetres
  /** Length of its face in the clear room; 0 for ceiling and floor. */
  readonly clearLengthMm: Millimetres
  readonly swallowed: boolean
  /** Existing area that sound passes through, openings not yet taken off. */
  readonly soundAreaM2: SquareMetres
  readonly addedMassKgM2: KilogramsPerSquareMetre
  readonly addedMassKg: number
  /** Far side to room; empty where nothing is known. */
  readonly layers: readonly Layer[]
  /** How many of those layers, from the far side, stand today. */
  readonly existingLayerCount: number
  /** null: no calculation stands behind a rating; the notes say why. */
  readonly rating: SurfaceRating | null
  readonly notes: readonly Note[]
}

/** Space before, taken by what, and left. */
export interface Ledger {
  readonly floorAreaM2: {
    readonly existing: SquareMetres
    readonly gained: SquareMetres
    readonly obstacles: SquareMetres
    /** All strips: walls' and obstacles' linings. */
    readonly lost: SquareMetres
    readonly lostToWalls: SquareMetres
    readonly lostToObstacleLinings: SquareMetres
    readonly clear: SquareMetres
  }
  readonly keptPercent: number
  readonly clearSizeMm: { readonly width: Millimetres; readonly length: Millimetres }
  readonly clearHeightMm: {
    readonly existing: Millimetres
    readonly floorTakes: Millimetres
    readonly ceilingTakes: Millimetres
    readonly lowest: Millimetres
  }
  readonly drops: readonly { readonly id: string; readonly name: string; readonly clearHeightMm: Millimetres }[]
  readonly volumeM3: { readonly existing: CubicMetres; readonly clear: CubicMetres }
  readonly largestCircleMm: Millimetres
  readonly parts: number
  readonly addedMassKg: number
  /** Added weight that hangs on the existing joists. */
  readonly onJoistsKgM2: KilogramsPerSquareMetre
}

/** A sentence a designer must read: what, why, and who decides. Life-safety cautions always stand in full. */
export interface Caution {
  readonly code: string
  readonly kind: 'life-safety' | 'check'
  readonly text: string
  /** Surfaces it speaks of; empty: the whole room. */
  readonly surfaces: readonly string[]
}

/** Everything computed for one scheme in one room. */
export interface SchemeResult {
  readonly schemeId: string
  readonly name: string
  readonly inset: Inset
  /** Clear room polygons, largest first. */
  readonly clear: readonly Polygon[]
  readonly ledger: Ledger
  /** Walls in outline order, then the ceiling, then the floor. */
  readonly surfaces: readonly SurfaceResult[]
  readonly cautions: readonly Caution[]
  /** Lowest STC among the surfaces that have a rating; openings, leaks and flanking not counted. */
  readonly lowestRated: { readonly surfaceId: string; readonly stc: Decibels } | null
}

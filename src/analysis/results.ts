import type { Prediction } from '#acoustics/layered/predict.ts'
import type { RatingEvidence } from '#acoustics/rating.ts'
import type { Swing } from '#analysis/room.ts'
import type { Assembly, SurfaceKind } from '#assemblies/assembly.ts'
import type { Layer } from '#assemblies/layer.ts'
import type { PublishedValue } from '#assemblies/published/match.ts'
import type { Inset } from '#geometry/inset/insetRoom.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'
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
  /** Existing area that sound passes through; of a wall less its openings. */
  readonly soundAreaM2: SquareMetres
  readonly addedMassKgM2: KilogramsPerSquareMetre
  readonly addedMassKg: number
  /** Far side to room; empty where nothing is known. */
  readonly layers: readonly Layer[]
  /** How many of those layers, from the far side, stand today. */
  readonly existingLayerCount: number
  /** Built on the other face of a wall that two rooms share, and rated with it as one; not among the layers. Absent: nothing. */
  readonly beyond?: Assembly | undefined
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
    /** All strips, walls' and obstacles' linings, and what boxes stand on. */
    readonly lost: SquareMetres
    readonly lostToWalls: SquareMetres
    readonly lostToObstacleLinings: SquareMetres
    /** Floor that silencer boxes stand on. */
    readonly lostToBoxes: SquareMetres
    readonly clear: SquareMetres
  }
  readonly keptPercent: number
  readonly clearSizeMm: { readonly width: Millimetres; readonly length: Millimetres }
  readonly clearHeightMm: {
    readonly existing: Millimetres
    readonly floorTakes: Millimetres
    readonly ceilingTakes: Millimetres
    /** Least over the clear plan, away from drops. */
    readonly lowest: Millimetres
    /** Volume over the clear floor up to what hangs there, over its area. */
    readonly mean: Millimetres
  }
  readonly drops: readonly { readonly id: string; readonly name: string; readonly clearHeightMm: Millimetres }[]
  /** Clear floor with at least this height over it. */
  readonly areaAbove: readonly { readonly heightMm: Millimetres; readonly areaM2: SquareMetres }[]
  /** Of the clear room only what a box fills itself is taken off: what is over it or under it counts. */
  readonly volumeM3: { readonly existing: CubicMetres; readonly clear: CubicMetres }
  readonly parts: number
  readonly addedMassKg: number
  /** Added weight that hangs on the existing joists. */
  readonly onJoistsKgM2: KilogramsPerSquareMetre
}

/** Part of the clear plan under one plane: height = atOrigin + perX * x + perY * y, all mm. */
export interface HeightPatch {
  readonly plan: readonly Polygon[]
  readonly plane: Plane
  /** Id of the drop it lies under; null: away from drops. */
  readonly drop: string | null
}

/** A plane over the plan: atOrigin + perX * x + perY * y, mm. */
export interface Plane {
  readonly atOrigin: Millimetres
  readonly perX: number
  readonly perY: number
}

/** Clear heights: patches that do not overlap and together make up the clear plan, and how well the planes fit. */
export interface HeightField {
  readonly patches: readonly HeightPatch[]
  /** Furthest a measured height lies from the plane laid through them; 0 for up to three. */
  readonly worstMissMm: Millimetres
}

/** One opening after linings and floor; what is said of leaves is null for what has none. */
export interface OpeningCheck {
  readonly id: string
  /** From the room face of the new lining to the existing face; 0 without one. */
  readonly revealDepthMm: Millimetres
  readonly clearWidthMm: Millimetres
  /** Head over the new floor, reveal lining off. */
  readonly clearHeightMm: Millimetres
  /** New floor over the existing sill line; 0 for openings with a sill. */
  readonly thresholdStepMm: Millimetres
  readonly door: DoorCheck | null
  /** Full sentences: a drop across the head, a swing that meets something, a leaf that stops short. */
  readonly problems: readonly Note[]
}

/** How the leaves of one door stand and move; angles in degrees from shut. */
export interface DoorCheck {
  readonly leaves: readonly LeafCheck[]
}

export interface LeafCheck {
  /** Where it hangs: "in the existing wall, 73 mm behind the new face". */
  readonly hangs: string
  readonly swing: Swing
  /** How far it opens before a reveal stops it; 90 or more is a full opening. */
  readonly opensDeg: number
  /** Plan of what it sweeps, mm. */
  readonly sweep: readonly Point[]
  /** Plan of the leaf itself, open at min(opensDeg, 90), mm. */
  readonly leaf: readonly Point[]
  readonly hinge: Point
  readonly widthMm: Millimetres
}

/** Whether a piece of furniture fits; problems are full sentences, empty: it does. */
export interface FurnitureCheck {
  readonly id: string
  readonly footprint: readonly Point[]
  /** Footprint and its clearances. */
  readonly withClearance: readonly Point[]
  readonly problems: readonly Note[]
}

/** Whether a silencer box of the scheme finds its place; problems are full sentences, empty: it does. */
export interface BoxCheck {
  readonly id: string
  readonly name: string
  readonly footprint: readonly Point[]
  /** Finished floor to its underside; null: it stands on the floor. */
  readonly undersideMm: Millimetres | null
  readonly heightMm: Millimetres
  readonly problems: readonly Note[]
}

/** Where two walls meet in the scheme as it would be built. */
export interface CornerAsBuilt {
  readonly cornerId: string
  /** Walls before and after the corner. */
  readonly walls: readonly [string, string]
  /** Wall whose lining runs through; null where fewer than two linings meet. */
  readonly runsThrough: string | null
  /** The user chose it. */
  readonly isChosen: boolean
  /** Left open between the lining that stops and what it meets, then sealed; null where nothing is built. */
  readonly gapMm: Millimetres | null
  /** A full sentence for the drawing. */
  readonly text: string
  /** A resilient lining would touch a wall that is left as it is. */
  readonly touchesUntreated: boolean
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
  /** The clear height everywhere. */
  readonly heights: HeightField
  readonly openings: readonly OpeningCheck[]
  readonly furniture: readonly FurnitureCheck[]
  /** Of the scheme's silencer boxes in this room. */
  readonly boxes: readonly BoxCheck[]
  readonly corners: readonly CornerAsBuilt[]
  /** Obstacles the scheme takes out of the room, by id; absent: none. */
  readonly takenOut?: readonly string[] | undefined
  /** Lowest STC among the surfaces that have a rating; openings, leaks and flanking not counted. */
  readonly lowestRated: { readonly surfaceId: string; readonly stc: Decibels } | null
}

import type { Point, Polygon } from '#geometry/polygon.ts'

/** Something that stands in the room and is no floor: a column, a chimney breast, a boxed pipe. */
export interface InsetObstacle {
  readonly outline: readonly Point[]
  readonly depthsMm: readonly number[]
}

/**
 * A room as it stands. `depthsMm[i]` is what the edge from `outline[i]` to `outline[i + 1]` gives up (or, below 0, wins).
 * The edges of the obstacles are numbered on from the outline's, obstacle by obstacle.
 */
export interface InsetInput {
  readonly outline: readonly Point[]
  readonly depthsMm: readonly number[]
  readonly obstacles: readonly InsetObstacle[]
}

/** Floor lost to one wall; a wall may own several strips, or none. */
export interface Strip extends Polygon {
  readonly wall: number
}

/** A straight piece of the clear room that belongs to a wall; s runs along the wall from its first corner, mm. */
export interface WallSection {
  readonly from: Point
  readonly to: Point
  readonly s0Mm: number
  readonly s1Mm: number
}

/** What is left of one wall. */
export interface WallResult {
  readonly wall: number
  readonly clearLengthMm: number
  /** Nothing of the wall is left along the clear room. */
  readonly swallowed: boolean
  /** Area of its strips, mm2. */
  readonly areaMm2: number
  readonly sections: readonly WallSection[]
}

/** An edge of the clear room, the room on its left: a lining's face, a bare wall, or the end of a lining. */
export interface InnerEdge {
  readonly from: Point
  readonly to: Point
  readonly wall: number
  readonly kind: 'face' | 'bare' | 'return'
}

export interface InsetWarning {
  readonly code:
    | 'repeated-point'
    | 'merged-edge'
    | 'tiny-edge'
    | 'swallowed'
    | 'split'
    | 'small-part'
    | 'nothing-left'
    | 'obstacle-outside'
  readonly message: string
  readonly walls: readonly number[]
}

/** The room after the inset; areas are measured on the grid's faces, so they add up exactly. */
export interface Inset {
  readonly clear: readonly Polygon[]
  readonly strips: readonly Strip[]
  readonly gained: readonly Polygon[]
  /** One for each edge given, in order. */
  readonly walls: readonly WallResult[]
  readonly edges: readonly InnerEdge[]
  readonly outlineMm2: number
  readonly obstaclesMm2: number
  readonly gainedMm2: number
  readonly lostMm2: number
  readonly warnings: readonly InsetWarning[]
  /** outline + gained - strips - obstacles - clear, in half square grid steps: 0. */
  readonly closureGridUnits2: number
}

/** Why there is no answer, in words for the reader; walls as the caller counts them, from 0. */
export interface InsetRefusal {
  readonly code:
    | 'not-finite'
    | 'wrong-depth-count'
    | 'too-few-corners'
    | 'too-large'
    | 'no-area'
    | 'spike'
    | 'self-intersection'
    | 'strip-collapses'
    | 'strip-collides'
    | 'engine'
  readonly message: string
  readonly walls: readonly number[]
}

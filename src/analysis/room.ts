import type { BoardMaterial } from '#assemblies/layer.ts'
import type { Millimetres } from '#units/quantity.ts'

/** What is behind a surface. */
export type FarSide = 'neighbour' | 'outdoors' | 'own-house' | 'soil' | 'nothing'
export const FAR_SIDES: readonly FarSide[] = ['neighbour', 'outdoors', 'own-house', 'soil', 'nothing']

/** What the tape touched. */
export type MeasuredTo = 'finished-face' | 'structure'

export type NeededForFire = 'yes' | 'no' | 'unknown'

/** The existing lining on the room side of a surface. */
export interface Lining {
  readonly thicknessMm: Millimetres
  readonly neededForFire: NeededForFire
  /** Absent: regular gypsum board. */
  readonly material?: BoardMaterial | undefined
}

/** What every surface says about itself. */
export interface SurfaceFacts {
  readonly id: string
  /** Id of an existing construction in the catalogue. */
  readonly existing: string
  readonly farSide: FarSide
  readonly measuredTo: MeasuredTo
  /** null: there is none, the structure is bare. */
  readonly lining: Lining | null
  /** Allowance for a leaning or bulging face, taken before the assembly. */
  readonly outOfTrueMm: Millimetres
}

export interface Corner {
  readonly id: string
  readonly xMm: Millimetres
  readonly yMm: Millimetres
}

/** One edge of the outline; wall i runs from corner i to the next one. */
export interface Wall extends SurfaceFacts {
  readonly from: string
  readonly to: string
}

/** One measured height: floor to what the tape touched overhead, at a place in the plan. */
export interface HeightPoint {
  readonly id: string
  readonly xMm: Millimetres
  readonly yMm: Millimetres
  readonly heightMm: Millimetres
  /** Level of the floor at that place over the datum; negative where a slab falls away. */
  readonly floorMm: Millimetres
}

export interface PlanPoint {
  readonly xMm: Millimetres
  readonly yMm: Millimetres
}

/** How several measured heights are read: as planes through them, or as a level ceiling at the lowest. */
export type CeilingShape = 'as-measured' | 'level'

/** Part of the ceiling with heights of its own: a step, a raised bay, one side of a roof. The later one counts where two overlap. */
export interface CeilingPart {
  readonly id: string
  readonly name: string
  readonly corners: readonly PlanPoint[]
  readonly heights: readonly HeightPoint[]
}

/** Column, pier or chimney breast: stands at full height, boxed all round by liningMm. */
export interface Obstacle {
  readonly id: string
  readonly name: string
  readonly corners: readonly PlanPoint[]
  readonly liningMm: Millimetres
}

/** Part of the ceiling that hangs lower: beam or duct soffit, with the depth of its own boxing. */
export interface Drop {
  readonly id: string
  readonly name: string
  readonly corners: readonly PlanPoint[]
  /** Floor to the bare underside, which is level. */
  readonly undersideMm: Millimetres
  readonly boxBelowMm: Millimetres
  readonly boxSidesMm: Millimetres
}

export type OpeningKind = 'door' | 'window' | 'vehicle-door' | 'vent'
export const OPENING_KINDS: readonly OpeningKind[] = ['door', 'window', 'vehicle-door', 'vent']

/** Which jamb a leaf hangs on: the one nearer the wall's first corner, or the other. */
export type Hinge = 'from' | 'to'

/** Into the room, or out of it. */
export type Swing = 'in' | 'out'

/** The second door of a pair with a lobby between: it hangs in the new lining. */
export interface LobbyDoor {
  readonly hinge: Hinge
  readonly swing: Swing
}

/** Door, window or vent in a wall, placed from the wall's first corner. What is said of leaves counts for doors only. */
export interface Opening {
  readonly id: string
  readonly kind: OpeningKind
  readonly name: string
  readonly wall: string
  readonly fromMm: Millimetres
  /** Between the jambs as they stand; of a round vent its diameter. */
  readonly widthMm: Millimetres
  readonly heightMm: Millimetres
  readonly sillMm: Millimetres
  readonly hinge: Hinge
  readonly swing: Swing
  readonly leaves: 'one' | 'two'
  /** Whether the leaf stays in the existing wall or moves to the face of the new lining. */
  readonly hungIn: 'existing' | 'lining'
  /** null: one door only. */
  readonly lobby: LobbyDoor | null
  /** Boards on jambs and head inside the reveal: they take width twice and height once. */
  readonly revealLiningMm: Millimetres
  readonly shape: 'rectangular' | 'round'
}

export type FurnitureKind = 'drum-kit' | 'desk' | 'piano' | 'booth' | 'other'
export const FURNITURE_KINDS: readonly FurnitureKind[] = ['drum-kit', 'desk', 'piano', 'booth', 'other']

/** Free space asked for round a footprint. */
export interface Clearance {
  readonly frontMm: Millimetres
  readonly backMm: Millimetres
  readonly leftMm: Millimetres
  readonly rightMm: Millimetres
}

/** Something the finished room has to hold, as a rectangle with the space round it that its user needs. */
export interface Furniture {
  readonly id: string
  readonly kind: FurnitureKind
  readonly name: string
  /** Middle of the footprint. */
  readonly xMm: Millimetres
  readonly yMm: Millimetres
  readonly widthMm: Millimetres
  readonly depthMm: Millimetres
  readonly heightMm: Millimetres
  /** Counter-clockwise; at 0 its width lies along x and its front looks down the page. */
  readonly angleDeg: number
  readonly clearance: Clearance
}

/** A distance between two corners that was measured across the room. */
export interface Diagonal {
  readonly id: string
  readonly from: string
  readonly to: string
  readonly measuredMm: Millimetres
}

/** The existing space. */
export interface Room {
  readonly id: string
  readonly name: string
  readonly corners: readonly Corner[]
  readonly walls: readonly Wall[]
  readonly ceiling: SurfaceFacts
  readonly floor: SurfaceFacts
  readonly heights: readonly HeightPoint[]
  readonly ceilingShape: CeilingShape
  readonly ceilingParts: readonly CeilingPart[]
  readonly obstacles: readonly Obstacle[]
  readonly drops: readonly Drop[]
  readonly openings: readonly Opening[]
  readonly furniture: readonly Furniture[]
  readonly diagonals: readonly Diagonal[]
}

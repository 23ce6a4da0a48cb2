import type { OctaveValues } from '#acoustics/bands.ts'
import type { BoardMaterial } from '#assemblies/layer.ts'
import { OPENING_KINDS, type OpeningKind, type OpeningMade } from '#assemblies/opening.ts'
import type { Millimetres } from '#units/quantity.ts'

export { OPENING_KINDS, type OpeningKind }

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
  /** What fills it as it stands; absent: nobody has said, so nothing is known of its sound. */
  readonly made?: OpeningMade | undefined
}

/** What a silencer takes off a duct path, as its maker or a table says. */
export interface Silencer {
  readonly name: string
  /** dB by octave; null: not stated, so nothing is counted there. */
  readonly insertionLossDb: OctaveValues
}

/** What is done to a duct against crosstalk. */
export interface DuctMade {
  /** Thickness of the lining on all sides; 0: bare sheet. */
  readonly liningMm: Millimetres
  readonly linedLengthMm: Millimetres
  /** Right-angled bends, lined where the duct is. */
  readonly bends: number
  readonly silencer: Silencer | null
}

/** A duct that leaves the room through a surface and lets sound go the way of the air. */
export interface Duct {
  readonly id: string
  readonly name: string
  /** Id of the surface it goes through. */
  readonly surface: string
  readonly purpose: 'supply' | 'return' | 'other'
  readonly shape: 'round' | 'rectangular'
  /** Of a round one its diameter. */
  readonly widthMm: Millimetres
  readonly heightMm: Millimetres
  /** Grille to grille. */
  readonly lengthMm: Millimetres
  /** Ids of the receivers that have a grille on it, or that hear where it ends outdoors. */
  readonly leadsTo: readonly string[]
  /** As it stands. */
  readonly made: DuctMade
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
  /** Absent: none. */
  readonly ducts?: readonly Duct[] | undefined
  /** People who play or work in it at once; absent: nobody has said. */
  readonly people?: number | undefined
  /** Reverberation time of the finished room, s; absent: USUAL_REVERBERATION_S. */
  readonly reverberationS?: number | undefined
}

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

/** Floor to what the tape touched overhead, at a place in the plan. */
export interface HeightPoint {
  readonly id: string
  readonly xMm: Millimetres
  readonly yMm: Millimetres
  readonly heightMm: Millimetres
}

export interface PlanPoint {
  readonly xMm: Millimetres
  readonly yMm: Millimetres
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
  /** Floor to the bare underside. */
  readonly undersideMm: Millimetres
  readonly boxBelowMm: Millimetres
  readonly boxSidesMm: Millimetres
}

export type OpeningKind = 'door' | 'window' | 'vehicle-door' | 'vent'

/** Door, window or vent in a wall, placed from the wall's first corner. */
export interface Opening {
  readonly id: string
  readonly kind: OpeningKind
  readonly name: string
  readonly wall: string
  readonly fromMm: Millimetres
  readonly widthMm: Millimetres
  readonly heightMm: Millimetres
  readonly sillMm: Millimetres
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
  readonly obstacles: readonly Obstacle[]
  readonly drops: readonly Drop[]
  readonly openings: readonly Opening[]
}

import type { KilogramsPerSquareMetre, Millimetres } from '#units/quantity.ts'

/** Board and sheet materials a layer can be made of; their properties stand in acoustics/data/materials.json. */
export type BoardMaterial =
  | 'gypsum-type-x'
  | 'gypsum-regular'
  | 'plywood'
  | 'osb'
  | 'glass'
  | 'laminated-glass'
  | 'steel-sheet'
  | 'concrete'
  | 'concrete-block-hollow'
  | 'brick'
  | 'mass-loaded-vinyl'
  | 'gypsum-concrete'

/** What a frame or a bracket stands on. */
export type FrameKind =
  | 'wood-stud'
  | 'light-steel-stud'
  | 'load-bearing-steel-stud'
  | 'masonry'
  | 'staggered-stud'
  | 'separate-studs'

/** How the leaves on both sides of a cavity are tied to each other. Two separate rows of studs: none. */
export type CavityLink =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'wood-stud' | 'light-steel-stud' | 'load-bearing-steel-stud' | 'staggered-stud'
      readonly spacingMm: Millimetres
    }
  | {
      readonly kind: 'resilient-channel'
      readonly frame: FrameKind
      readonly studSpacingMm?: Millimetres | undefined
      readonly channelSpacingMm: Millimetres
    }
  | {
      readonly kind: 'sound-clip' | 'low-profile-clip'
      readonly frame: FrameKind
      readonly rowSpacingMm: Millimetres
      readonly clipSpacingMm: Millimetres
    }
  | {
      readonly kind: 'spring-hanger'
      readonly frame: FrameKind
      readonly rowSpacingMm: Millimetres
      readonly hangerSpacingMm: Millimetres
    }

/** One row of studs or joists. */
export interface FrameMembers {
  readonly material: 'wood' | 'light-steel' | 'load-bearing-steel'
  /** Of the timber or steel itself, which can reach beyond the cavity it stands in. */
  readonly depthMm: Millimetres
  readonly spacingMm: Millimetres
}

/** The frame or hardware that stands in a cavity; the rest of the cavity's depth is clear gap. */
export interface CavityFrame {
  readonly name: string
  readonly depthMm: Millimetres
  readonly massKgM2: KilogramsPerSquareMetre
  /** Studs or joists that a leaf is screwed straight to; absent: hardware, or not known. */
  readonly members?: FrameMembers | undefined
}

export interface BoardLayer {
  readonly kind: 'board'
  readonly material: BoardMaterial
  readonly thicknessMm: Millimetres
  /** As weighed; absent: thickness times the material's density. */
  readonly surfaceMassKgM2?: KilogramsPerSquareMetre | undefined
}

/** Viscoelastic compound between two boards. */
export interface DampingLayer {
  readonly kind: 'damping-compound'
  /** Absent: DAMPING_THICKNESS_MM. */
  readonly thicknessMm?: Millimetres | undefined
}

export interface CavityLayer {
  readonly kind: 'cavity'
  readonly depthMm: Millimetres
  readonly fill?: 'mineral-wool' | undefined
  /** Depth of the fill; absent with a fill: the whole cavity. */
  readonly fillMm?: Millimetres | undefined
  /** Where a part fill lies; absent: as usual for the link. */
  readonly fillAgainst?: 'far' | 'room' | 'both' | undefined
  readonly link: CavityLink
  /** The frame or hardware that carries the leaf on the room side; where both leaves share one frame, that one. */
  readonly frame?: CavityFrame | undefined
  /** A second frame in the same cavity, which carries the leaf on the far side only. */
  readonly farFrame?: CavityFrame | undefined
}

/**
 * Something that takes depth and weight but forms no leaf of its own, such as foam bonded to concrete, a floor
 * finish or a resilient mat. `floats` marks a layer another floor rests on; where its stiffness is not known, what
 * stands on it is not predicted.
 */
export interface FillerLayer {
  readonly kind: 'filler'
  readonly name: string
  readonly thicknessMm: Millimetres
  readonly surfaceMassKgM2: KilogramsPerSquareMetre
  readonly floats?: boolean | undefined
  /** Of a floating layer: stiffness under vibration, MN/m3, over the whole floor (EN 29052-1). */
  readonly dynamicStiffnessMNm3?: number | undefined
  /** Of a floating layer on separate mounts: how far apart they stand both ways; absent: it lies all over. */
  readonly mountSpacingMm?: Millimetres | undefined
}

/** True for a layer a floor floats on whose stiffness nobody has said. */
export function isUnknownFloat(layer: Layer): boolean {
  return layer.kind === 'filler' && layer.floats === true && layer.dynamicStiffnessMNm3 === undefined
}

/** One layer of a build-up; build-ups list their layers in order from the far side to the room. */
export type Layer = BoardLayer | DampingLayer | CavityLayer | FillerLayer

/** Usual thickness of a compound between two boards. @source common practice, no source */
export const DAMPING_THICKNESS_MM: Millimetres = 0.5
/** Usual weight of that compound: two large tubes a 4 x 8 ft sheet. @source common practice, no source */
export const DAMPING_MASS_KG_M2: KilogramsPerSquareMetre = 0.5

/** Depth one layer takes, mm. */
export function layerDepth(layer: Layer): Millimetres {
  switch (layer.kind) {
    case 'board':
    case 'filler':
      return layer.thicknessMm
    case 'damping-compound':
      return layer.thicknessMm ?? DAMPING_THICKNESS_MM
    case 'cavity':
      return layer.depthMm
  }
}

/** Depth of a build-up: the sum of its layers, mm. */
export function layersDepth(layers: readonly Layer[]): Millimetres {
  return layers.reduce((sum, layer) => sum + layerDepth(layer), 0)
}

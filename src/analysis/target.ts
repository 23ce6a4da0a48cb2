import type { OctaveValues } from '#acoustics/bands.ts'
import type { CubicMetres, Decibels, Millimetres, SquareMetres } from '#units/quantity.ts'

/** Where the levels of a source were read or assumed; typed ones were measured by the user. */
export type LevelBasis = 'seen' | 'memory' | 'measured'

/** What a source's levels are of: the whole room on average, one metre from a talker, or outdoors at the wall. */
export type LevelPlace = 'room-average' | 'one-metre' | 'facade'

/** Something that is heard: an instrument, a band, the traffic. */
export interface Source {
  readonly id: string
  readonly name: string
  /** Key of the preset it began as; null: typed. */
  readonly preset: string | null
  /** dB re 20 uPa by octave; null: not stated, so nothing is judged there. */
  readonly levelsDb: OctaveValues
  readonly place: LevelPlace
  readonly basis: LevelBasis
  /** One standard deviation of every level. */
  readonly sdDb: Decibels
  /** Drums, bass, cinema, footsteps: they also shake the building, which no airborne figure covers. */
  readonly shakes: boolean
}

/** What must not be passed at a receiver. */
export type Limit =
  | { readonly kind: 'NC' | 'NR'; readonly index: number }
  | { readonly kind: 'dBA' | 'dBC'; readonly levelDb: Decibels }

/** How much a room swallows: by what stands in it, or typed. */
export type Furnishing = 'furnished' | 'bare' | 'typed'

/** Where a receiver is. */
export type ReceiverPlace =
  /** A room behind named surfaces. */
  | {
      readonly kind: 'room'
      readonly volumeM3: CubicMetres
      readonly furnishing: Furnishing
      /** Equivalent absorption area; only where furnishing is typed. */
      readonly absorptionM2: SquareMetres | null
    }
  /** A point in the open. */
  | {
      readonly kind: 'outdoors'
      readonly distanceMm: Millimetres
      /** The receiver stands before a wall that reflects: 3 dB more. */
      readonly atFacade: boolean
    }
  /** The room that is built itself, with noise coming in. */
  | { readonly kind: 'this-room' }

/** A surface that sound goes through on its way to a receiver. */
export interface Through {
  readonly surface: string
  /** Outdoors only: from this surface; absent: the receiver's own distance. */
  readonly distanceMm?: Millimetres | undefined
  /** Outdoors only: turned away or screened by so much; absent: 0. */
  readonly screenedDb?: Decibels | undefined
}

/** How the building goes on from the room to the receiver; limits in data/junctions.json. */
export type JunctionClass = 'none' | 'separate' | 'careful' | 'common-slab' | 'continuous-plates' | 'continuous-joists'
export const JUNCTION_CLASSES: readonly JunctionClass[] = [
  'none',
  'separate',
  'careful',
  'common-slab',
  'continuous-plates',
  'continuous-joists',
]

/** Level differences measured on site. */
export interface Measured {
  readonly id: string
  readonly when: 'before' | 'after'
  readonly name: string
  /** Level in the room less level at the receiver, dB by octave; null: not measured. */
  readonly differenceDb: OctaveValues
}

/** Somebody who must not hear it, or the room itself when noise comes in. */
export interface Receiver {
  readonly id: string
  readonly name: string
  /** Room of the project that the sound leaves; where noise comes in, the room it enters. */
  readonly room: string
  /** Id of a source; null: none chosen yet. */
  readonly source: string | null
  readonly place: ReceiverPlace
  readonly through: readonly Through[]
  readonly limit: Limit
  /** Key of the preset the limit began as; null: typed. */
  readonly limitPreset: string | null
  /** Beat or tone is heard through more: the limit is held 5 dB lower. */
  readonly hasBeat: boolean
  /** Index of the NC curve of what else is heard there. */
  readonly backgroundNc: number
  readonly junction: JunctionClass
  /** Linings on the receiver's side of the junction. */
  readonly linedBeyond: 'none' | 'shared' | 'all'
  readonly measured: readonly Measured[]
}

import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Receiver, Source } from '#analysis/target.ts'
import type { Assembly } from '#assemblies/assembly.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

export const FORMAT = 'leafgap-project'
export const VERSION = 1

/** Where a new wall puts its thickness, as one looks along the line it was drawn on: to the left, half and half, to the right. */
export type Placement = 'first' | 'middle' | 'second'

/** A new wall between two rooms of the project: the two walls it shows them, and what it is built of. */
export interface Partition {
  readonly id: string
  readonly name: string
  /** Id of an existing construction; its layers give the depth. Linings on either face are choices of the two walls. */
  readonly construction: string
  readonly placement: Placement
  readonly sides: readonly [PartitionSide, PartitionSide]
}

export interface PartitionSide {
  readonly room: string
  readonly wall: string
}

/**
 * A picture under the plan, to trace from. The picture itself is kept beside the document by its content hash, and stands
 * in `dataBase64` only in a saved file.
 */
export interface Underlay {
  readonly id: string
  readonly name: string
  readonly sha256: string
  readonly mime: 'image/png' | 'image/jpeg'
  readonly widthPx: number
  readonly heightPx: number
  /** Where the middle of the picture lies in the plan. */
  readonly xMm: Millimetres
  readonly yMm: Millimetres
  readonly mmPerPx: number
  /** Its scale comes from two points and the distance measured between them; absent: it is a guess. */
  readonly isCalibrated?: boolean | undefined
  /** Counter-clockwise. */
  readonly angleDeg: number
  readonly opacity: number
  readonly isLocked: boolean
  readonly isShown: boolean
  readonly dataBase64?: string | undefined
}

/** One file: the rooms as they stand and the schemes. Only what the user decided; results are never stored. */
export interface Project {
  readonly format: typeof FORMAT
  readonly version: typeof VERSION
  readonly name: string
  /** A line of the user's own, printed on the sheet. */
  readonly note: string
  readonly units: LengthUnit
  readonly rooms: readonly Room[]
  readonly partitions: readonly Partition[]
  readonly receivers: readonly Receiver[]
  readonly sources: readonly Source[]
  /** Built by the user of this project, beside the built-in ones. */
  readonly assemblies: readonly Assembly[]
  readonly schemes: readonly Scheme[]
  /** Id of the scheme put forward to the client; null: none yet. */
  readonly proposal: string | null
  readonly underlays: readonly Underlay[]
}

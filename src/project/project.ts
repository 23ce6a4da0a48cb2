import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Assembly } from '#assemblies/assembly.ts'
import type { LengthUnit } from '#units/quantity.ts'

export const FORMAT = 'leafgap-project'
export const VERSION = 1

/** Something a later version works with; kept unread. */
export interface Reserved {
  readonly id: string
  readonly [key: string]: unknown
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
  readonly partitions: readonly Reserved[]
  readonly receivers: readonly Reserved[]
  readonly sources: readonly Reserved[]
  /** Built by the user of this project, beside the built-in ones. */
  readonly assemblies: readonly Assembly[]
  readonly schemes: readonly Scheme[]
  /** Id of the scheme put forward to the client; null: none yet. */
  readonly proposal: string | null
  readonly underlays: readonly Reserved[]
}

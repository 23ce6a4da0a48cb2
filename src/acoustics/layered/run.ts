import type { SystemModel } from '#acoustics/layered/compile.ts'
import type { MethodOptions } from '#acoustics/layered/method.ts'
import type { Springs } from '#acoustics/layered/solvePair.ts'
import type { Tone } from '#acoustics/layered/tone.ts'
import type { Workspace } from '#acoustics/layered/workspace.ts'

/** Everything that stays the same over the frequencies of one prediction. */
export interface Run {
  readonly model: SystemModel
  readonly method: MethodOptions
  /** m2 */
  readonly area: number
  readonly ws: Workspace
  /** The tone in hand. */
  readonly tone: Tone
  /** Sum of the springs of each cavity, Pa s/m. */
  readonly springs: Springs
  readonly noSprings: Springs
  /** Spring of the connection in hand. */
  readonly spring: Float64Array
  /** Squared size of every connection's spring, by cavity and place in its list. */
  readonly spring2: readonly Float64Array[]
  /** By cavity: mean squared velocity difference under diffuse sound from either side. */
  readonly drivenFromFar: Float64Array
  readonly drivenFromRoom: Float64Array
  readonly hasConnections: boolean
  /** Sound from both sides is averaged: only where the structure carries some and the two sides differ. */
  readonly bothWays: boolean
  /** Gauss nodes on each side of a coincidence angle. */
  readonly nodesPerSide: number
  /** Frequency the cavity impedances at the plain nodes belong to. */
  cavitiesAtHz: number
}

import { spreadOf } from '#acoustics/layered/spread.ts'
import type { LayeredSystem } from '#acoustics/layered/system.ts'
import type { Decibels } from '#units/quantity.ts'

/** A published wall or floor the correction leans on. */
export interface AnchorNeighbour {
  /** Id of the row among the published ratings. */
  readonly id: string
  /** As printed. */
  readonly stc: Decibels
  /** 1: the same build-up; 0: nothing in common. */
  readonly likeness: number
}

/** What published measurements of similar build-ups add to the calculation. */
export interface Anchor {
  /** Added to every band, dB; 0 far from anything published. */
  readonly shiftDb: Decibels
  /** One standard deviation of STC after the shift, dB; never below 2.0. */
  readonly sdDb: Decibels
  /** A published measurement is near enough to say anything. */
  readonly isNear: boolean
  /** Most alike first, at most three. */
  readonly neighbours: readonly AnchorNeighbour[]
}

/** The correction of a build-up towards published measurements; the same for a system and its reverse. */
export function anchorOf(system: LayeredSystem): Anchor {
  return { shiftDb: 0, sdDb: spreadOf(system).stcDb, isNear: false, neighbours: [] }
}

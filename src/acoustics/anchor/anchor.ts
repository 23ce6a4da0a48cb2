import { type AnchorNeighbour, correctionOf, prepare } from '#acoustics/anchor/correction.ts'
import trained from '#acoustics/anchor/data/anchor.json' with { type: 'json' }
import { anchorPoint } from '#acoustics/anchor/point.ts'
import { laboratorySd, spreadOf } from '#acoustics/layered/spread.ts'
import type { LayeredSystem } from '#acoustics/layered/system.ts'
import type { Decibels } from '#units/quantity.ts'

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

const GROUPS = {
  walls: prepare(trained.groups.walls),
  floors: prepare(trained.groups.floors),
  masonry: prepare(trained.groups.masonry),
}

/**
 * The correction of a build-up towards published measurements, and the spread left after it. Far from every published
 * row the correction fades and the spread is that of the kind of construction; nearest, that of laboratories among
 * each other.
 * @returns the same for a system and its reverse
 * @source data/anchor.json, made by `npm run train-anchor`; accuracy: tests/reference/VALIDATION.md
 */
export function anchorOf(system: LayeredSystem): Anchor {
  const family = spreadOf(system).stcDb
  const place = anchorPoint(system)
  if (place === null) return { shiftDb: 0, sdDb: family, isNear: false, neighbours: [] }
  const { shiftDb, varianceDb2, neighbours } = correctionOf(GROUPS[place.group], place, place.group)
  const isNear = neighbours.length > 0
  const posterior = Math.hypot(laboratorySd(system), Math.sqrt(varianceDb2))
  return { shiftDb, sdDb: isNear ? posterior : Math.max(family, posterior), isNear, neighbours }
}

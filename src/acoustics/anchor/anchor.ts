import trained from '#acoustics/anchor/data/anchor.json' with { type: 'json' }
import scales from '#acoustics/anchor/data/scales.json' with { type: 'json' }
import { covariance, likeness, type Place } from '#acoustics/anchor/kernel.ts'
import { type AnchorGroup, anchorPoint } from '#acoustics/anchor/point.ts'
import { laboratorySd, spreadOf } from '#acoustics/layered/spread.ts'
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

interface TrainedGroup {
  readonly factor: number
  readonly rows: readonly (Place & { readonly id: string; readonly stc: Decibels; readonly weight: number })[]
  readonly inverse: readonly (readonly number[])[]
}

const GROUPS: Readonly<Record<AnchorGroup, TrainedGroup>> = trained.groups
/** Most neighbours worth naming. */
const NAMED = 3

/** Sum over all pairs of near[i] inverse[i][j] near[j]; the inverse is stored as its lower triangle. */
function quadratic(inverse: TrainedGroup['inverse'], near: readonly number[]): number {
  let sum = 0
  for (let i = 0; i < inverse.length; i++) {
    const line = inverse[i]!
    let row = 0
    for (let j = 0; j < i; j++) row += line[j]! * near[j]!
    sum += near[i]! * (2 * row + line[i]! * near[i]!)
  }
  return sum
}

/** Least and most of every feature among the published rows of a group. */
function spansOf({ rows }: TrainedGroup): readonly (readonly [number, number])[] {
  const features = rows[0]?.features ?? []
  return features.map((_, i) => {
    const seen = rows.map((row) => row.features[i]!)
    return [Math.min(...seen), Math.max(...seen)]
  })
}

const SPANS = { walls: spansOf(GROUPS.walls), floors: spansOf(GROUPS.floors), masonry: spansOf(GROUPS.masonry) }

/** Within what the published rows span: a slope is not followed past the last row it was seen at. */
function withinRows(place: Place, group: AnchorGroup): Place {
  const features = SPANS[group].map(([least, most], i) => Math.min(Math.max(place.features[i]!, least), most))
  return { ...place, features }
}

/** All of the correction where a published row is near, none of it at half that likeness, and a slope between. */
function shareOf(mostAlike: number): number {
  const near = scales.nearFromLikeness.value
  return Math.min(1, Math.max(0, (2 * mostAlike) / near - 1))
}

function nearestOf(place: Place, group: AnchorGroup): readonly AnchorNeighbour[] {
  return GROUPS[group].rows
    .map(({ id, stc, ...row }) => ({ id, stc, likeness: likeness(row, place, group) }))
    .toSorted((a, b) => b.likeness - a.likeness)
    .slice(0, NAMED)
}

/**
 * The correction of a build-up towards published measurements, and the spread left after it: a Gaussian-process
 * regression of published minus calculated STC over features of the build-up. Far from every published row the
 * correction fades and the spread is that of the kind of construction; nearest, that of laboratories among each other.
 * @returns the same for a system and its reverse
 * @source data/anchor.json, made by `npm run train-anchor`; accuracy: tests/reference/VALIDATION.md
 */
export function anchorOf(system: LayeredSystem): Anchor {
  const family = spreadOf(system).stcDb
  const place = anchorPoint(system)
  if (place === null) return { shiftDb: 0, sdDb: family, isNear: false, neighbours: [] }
  const { group } = place
  const { factor, rows, inverse } = GROUPS[group]
  const known = withinRows(place, group)
  const shiftDb = rows.reduce((sum, row) => sum + row.weight * factor ** 2 * covariance(row, known, group), 0)
  const near = rows.map((row) => factor ** 2 * covariance(row, place, group))
  const left = factor ** 2 * covariance(place, place, group) - quadratic(inverse, near)
  const nearest = nearestOf(place, group)
  const neighbours = nearest.filter((row) => row.likeness >= scales.nearFromLikeness.value)
  const isNear = neighbours.length > 0
  const posterior = Math.hypot(laboratorySd(system), Math.sqrt(Math.max(0, left)))
  return {
    shiftDb: shareOf(nearest[0]?.likeness ?? 0) * shiftDb,
    sdDb: isNear ? posterior : Math.max(family, posterior),
    isNear,
    neighbours,
  }
}

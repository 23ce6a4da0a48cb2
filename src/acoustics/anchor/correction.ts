import scales from '#acoustics/anchor/data/scales.json' with { type: 'json' }
import { covariance, covarianceAt, likeness, type Place } from '#acoustics/anchor/kernel.ts'
import type { AnchorGroup } from '#acoustics/anchor/point.ts'
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

/** Published rows a correction is conditioned on. */
export interface TrainedGroup {
  /** Factor on every amplitude of data/scales.json. */
  readonly factor: number
  /** `weight`: inverse covariance times residuals, 1/dB */
  readonly rows: readonly (Place & { readonly id: string; readonly stc: Decibels; readonly weight: number })[]
  /** Lower triangle of the inverse covariance of the rows, 1/dB2. */
  readonly inverse: readonly (readonly number[])[]
}

/** The same with the least and most of every feature among its rows. */
export interface PreparedGroup extends TrainedGroup {
  readonly spans: readonly (readonly [number, number])[]
}

/** What similar published rows add to a calculation. */
export interface Correction {
  readonly shiftDb: Decibels
  /** What the rows leave open, dB2, >= 0. */
  readonly varianceDb2: number
  /** Rows near enough to lean on, most alike first. */
  readonly neighbours: readonly AnchorNeighbour[]
}

/** Most neighbours worth naming. */
const NAMED = 3

export function prepare(trained: TrainedGroup): PreparedGroup {
  const features = trained.rows[0]?.features ?? []
  const spans = features.map((_, i): [number, number] => {
    const seen = trained.rows.map((row) => row.features[i]!)
    return [Math.min(...seen), Math.max(...seen)]
  })
  return { ...trained, spans }
}

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

/** Within what the published rows span: a slope is not followed past the last row it was seen at. */
function withinRows(place: Place, { spans }: PreparedGroup): Place {
  const features = spans.map(([least, most], i) => Math.min(Math.max(place.features[i]!, least), most))
  return { ...place, features }
}

/** All of the correction where a published row is near, none of it at half that likeness, and a slope between. */
function shareOf(mostAlike: number): number {
  return Math.min(1, Math.max(0, (2 * mostAlike) / scales.nearFromLikeness.value - 1))
}

/** The rows most alike, best first. */
function mostAlike({ rows }: PreparedGroup, alike: readonly number[]): readonly AnchorNeighbour[] {
  const best: AnchorNeighbour[] = []
  for (let i = 0; i < rows.length; i++) {
    const at = best.findIndex((one) => one.likeness < alike[i]!)
    if (at < 0 && best.length >= NAMED) continue
    const { id, stc } = rows[i]!
    best.splice(at < 0 ? best.length : at, 0, { id, stc, likeness: alike[i]! })
    if (best.length > NAMED) best.pop()
  }
  return best
}

/**
 * Gaussian-process regression of published minus calculated STC over features of the build-up.
 * @source Rasmussen and Williams (2006), section 2.2, memory
 */
export function correctionOf(trained: PreparedGroup, place: Place, group: AnchorGroup): Correction {
  const { factor, rows, inverse } = trained
  const scale = factor ** 2
  const alike = rows.map((row) => likeness(row, place, group))
  const near = rows.map((row, i) => scale * covarianceAt(alike[i]!, row, place, group))
  const known = withinRows(place, trained)
  const isWithin = known.features.every((value, i) => value === place.features[i])
  const told = isWithin ? near : rows.map((row) => scale * covariance(row, known, group))
  const left = scale * covariance(place, place, group) - quadratic(inverse, near)
  const nearest = mostAlike(trained, alike)
  return {
    shiftDb: shareOf(nearest[0]?.likeness ?? 0) * rows.reduce((sum, row, i) => sum + row.weight * told[i]!, 0),
    varianceDb2: Math.max(0, left),
    neighbours: nearest.filter((row) => row.likeness >= scales.nearFromLikeness.value),
  }
}

import table from '#acoustics/data/airflow.json' with { type: 'json' }
import type { SquareMetres } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** Outdoor air a room for music needs, L/s. @source ASHRAE Standard 62.1, seen, data/airflow.json */
export function neededAirflow(people: number, areaM2: SquareMetres): number {
  return table.need.perPersonLPerS * people + table.need.perM2LPerS * areaM2
}

/** Mean velocity in a free area, m/s; `areaM2` > 0. */
export function faceVelocity(lPerS: number, areaM2: SquareMetres): number {
  invariant(areaM2 > 0, 'air needs an opening')
  return lPerS / 1000 / areaM2
}

/** Highest velocity at a grille, m/s. */
export interface VelocityLimit {
  readonly supplyMS: number
  readonly returnMS: number
  /** False outside NC-15..30: below it goes on in proportion, above it stays (our own choice). */
  readonly isPrinted: boolean
}

const { curves, fpmPerMS } = table.faceVelocity

/** Highest velocity at a grille for an NC curve. @source Egan, seen, data/airflow.json */
export function velocityLimit(nc: number): VelocityLimit {
  const lowest = curves[0]!.nc
  const highest = curves.at(-1)!.nc
  const asked = Math.min(nc, highest)
  const above = curves.findIndex((curve) => curve.nc > asked)
  const at = above < 0 ? curves.length - 2 : Math.max(0, above - 1)
  const [low, high] = [curves[at]!, curves[at + 1]!]
  const share = (asked - low.nc) / (high.nc - low.nc)
  return {
    supplyMS: (low.supplyFpm + share * (high.supplyFpm - low.supplyFpm)) / fpmPerMS,
    returnMS: (low.returnFpm + share * (high.returnFpm - low.returnFpm)) / fpmPerMS,
    isPrinted: nc >= lowest && nc <= highest,
  }
}

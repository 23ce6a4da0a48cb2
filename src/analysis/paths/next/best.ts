import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Margin } from '#analysis/paths/margin.ts'
import { type Costs, costsOf, isForbidden, isUnbuildable, newCautions, roughCosts } from '#analysis/paths/next/costs.ts'
import type { Trial } from '#analysis/paths/next/trial.ts'
import { tryFully, tryQuickly } from '#analysis/paths/next/tryOut.ts'
import type { Caution } from '#analysis/results.ts'
import { withChange } from '#analysis/scheme.ts'
import type { Receiver } from '#analysis/target.ts'
import type { Decibels, SquareMetres } from '#units/quantity.ts'

/** Gains this near each other count as the same: then the step that takes least is the best. @source our own choice */
const SAME_DB: Decibels = 0.5
/** Less than this, at the lower end and in the middle, is no step. @source our own choice */
const LEAST_GAIN_DB: Decibels = 0.1
/** How far a quick gain may be off the full one. */
const QUICK_OFF_DB: Decibels = 0.02
/** Areas and heights nearer than this cost the same. */
const SAME_M2 = 0.005
const SAME_MM = 0.5

export interface Gain {
  readonly gainDb: Decibels
  readonly gainLow95Db: Decibels
}

/** True where the margin gains at its lower end or in its middle, and loses at neither. */
export function isWorthIt({ gainDb, gainLow95Db }: Gain, offDb: Decibels = 0): boolean {
  return Math.min(gainDb, gainLow95Db) >= -offDb && Math.max(gainDb, gainLow95Db) >= LEAST_GAIN_DB - offDb
}

/** A change with what it brings and takes: roughly so far, or as the plan says once it is cut anew. */
interface Tried extends Gain, Costs {
  readonly trial: Trial
}

/** A change that was tried out in full and can be built. */
export interface Step extends Tried {
  readonly cautions: readonly string[]
  readonly minds: readonly string[]
}

/** Tries changes for one receiver, each of them once, whichever paths ask for it; null: not known then, or not buildable. */
export interface Trier {
  readonly quickly: (trial: Trial) => Tried | null
  readonly fully: (trial: Trial) => Step | null
}

export function trierFor(input: AnswerInput, receiver: Receiver, now: Margin): Trier {
  const gainOver = (margin: Margin | null): Gain | null =>
    margin && { gainDb: margin.middle - now.middle, gainLow95Db: margin.low - now.low }
  return {
    quickly: once((trial) => {
      const tried = tryQuickly(input, receiver, trial.change)
      const gain = gainOver(tried.margin)
      const byPaths = gainOver(tried.marginByPaths)
      if (!gain || !byPaths || !isWorthIt(byPaths, QUICK_OFF_DB)) return null
      if (isUnbuildable(input, withChange(input.scheme, trial.change), tried.result)) return null
      return { trial, ...gain, ...roughCosts(input.result, tried.result) }
    }),
    fully: once((trial) => {
      const tried = tryFully(input, receiver, trial.change)
      const gain = tried && gainOver(tried.margin)
      if (!gain) return null
      const cautions = newCautions(input.result, tried.result)
      if (isForbidden(cautions)) return null
      const texts = (kind: Caution['kind']) => cautions.filter((one) => one.kind === kind).map(({ text }) => text)
      const read = new Set([...trial.cautions, ...texts('life-safety')])
      const minds = new Set([...(trial.minds ?? []), ...texts('check')].filter((text) => !read.has(text)))
      return { trial, ...gain, ...costsOf(input.result, tried.result), cautions: [...read], minds: [...minds] }
    }),
  }
}

/** Remembers by the change itself, so that a wall and the leak round it share what was tried. */
function once<Outcome>(make: (trial: Trial) => Outcome): (trial: Trial) => Outcome {
  const known = new Map<string, { readonly outcome: Outcome }>()
  return (trial) => {
    const key = JSON.stringify(trial.change)
    const tried = known.get(key) ?? { outcome: make(trial) }
    known.set(key, tried)
    return tried.outcome
  }
}

/**
 * The best of some changes: the largest gain at the lower end of the range, then in its middle; among those within 0.5 dB
 * of it the one that takes least floor, then height, then weight. null: none gains 0.1 dB at either without losing at the
 * other.
 */
export function* bestStep(trials: readonly Trial[], trier: Trier): Generator<undefined, Step | null, undefined> {
  let left: readonly Tried[] = []
  for (const trial of trials) {
    const tried = trier.quickly(trial)
    if (tried && isWorthIt(tried, QUICK_OFF_DB)) left = [...left, tried]
    yield undefined
  }
  while (left.length > 0) {
    const best = leastOfTheBest(left)
    const step = trier.fully(best.trial)
    if (step && isWorthIt(step)) return step
    left = left.filter((tried) => tried !== best)
    yield undefined
  }
  return null
}

function leastOfTheBest(all: readonly Tried[]): Tried {
  const most = Math.max(...all.map(({ gainLow95Db }) => gainLow95Db))
  const near = all.filter(({ gainLow95Db }) => gainLow95Db >= most - SAME_DB)
  const mostMiddle = Math.max(...near.map(({ gainDb }) => gainDb))
  return near
    .filter(({ gainDb }) => gainDb >= mostMiddle - SAME_DB)
    .reduce((least, tried) => (byCost(tried, least) < 0 ? tried : least))
}

/** The larger gain first. */
export function byGain(a: Gain, b: Gain): number {
  return b.gainLow95Db - a.gainLow95Db || b.gainDb - a.gainDb
}

function byCost(a: Tried, b: Tried): number {
  const area = floorOf(a) - floorOf(b)
  if (Math.abs(area) > SAME_M2) return area
  const height = a.heightLostMm - b.heightLostMm
  if (Math.abs(height) > SAME_MM) return height
  return a.addedMassKg - b.addedMassKg || byGain(a, b)
}

function floorOf({ areaLostM2, trial }: Tried): SquareMetres {
  return areaLostM2 + (trial.takesM2 ?? 0)
}

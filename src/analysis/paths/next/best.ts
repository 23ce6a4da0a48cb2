import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Margin } from '#analysis/paths/margin.ts'
import { type Costs, costsOf, isForbidden, newCautions } from '#analysis/paths/next/costs.ts'
import type { Trial } from '#analysis/paths/next/trial.ts'
import { tryFully, tryQuickly } from '#analysis/paths/next/tryOut.ts'
import type { Receiver } from '#analysis/target.ts'
import type { Decibels } from '#units/quantity.ts'

/** Gains this near each other count as the same: then the step that takes least is the best. @source our own choice */
const SAME_DB: Decibels = 0.5
/** Less than this is no step. @source our own choice */
export const LEAST_GAIN_DB: Decibels = 0.1
/** How far a quick gain may be off the full one. */
const QUICK_OFF_DB: Decibels = 0.02
/** Areas and heights nearer than this cost the same. */
const SAME_M2 = 0.005
const SAME_MM = 0.5

export interface Gain {
  readonly gainDb: Decibels
  readonly gainLow95Db: Decibels
}

/** A change that was tried out in full and can be built. */
export interface Step extends Gain, Costs {
  readonly trial: Trial
  readonly cautions: readonly string[]
}

/** Tries changes for one receiver, each of them once, whichever paths ask for it. */
export interface Trier {
  readonly quickly: (trial: Trial) => Gain | null
  readonly fully: (trial: Trial) => Step | null
}

export function trierFor(input: AnswerInput, receiver: Receiver, now: Margin): Trier {
  const gainOver = (margin: Margin | null): Gain | null =>
    margin && { gainDb: margin.middle - now.middle, gainLow95Db: margin.low - now.low }
  return {
    quickly: once((trial) => gainOver(tryQuickly(input, receiver, trial.change).margin)),
    fully: once((trial) => {
      const tried = tryFully(input, receiver, trial.change)
      const gain = tried && gainOver(tried.margin)
      if (!gain) return null
      const cautions = newCautions(input.result, tried.result)
      if (isForbidden(cautions)) return null
      const texts = [...trial.cautions, ...cautions.map(({ text }) => text)]
      return { trial, ...gain, ...costsOf(input.result, tried.result), cautions: [...new Set(texts)] }
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
 * of it the one that takes least floor, then height, then weight. null: none gains 0.1 dB.
 */
export function bestStep(trials: readonly Trial[], trier: Trier): Step | null {
  const hopeful = trials
    .flatMap((trial) => {
      const gain = trier.quickly(trial)
      return gain && gain.gainLow95Db >= LEAST_GAIN_DB - QUICK_OFF_DB ? [{ trial, ...gain }] : []
    })
    .sort((a, b) => byGain(a, b))
  const steps: Step[] = []
  let most = Number.NEGATIVE_INFINITY
  for (const { trial, gainLow95Db } of hopeful) {
    // Those after it gain even less: none of them can come within reach of the best any more.
    if (gainLow95Db + QUICK_OFF_DB < most - SAME_DB) break
    const step = trier.fully(trial)
    if (!step || step.gainLow95Db < LEAST_GAIN_DB) continue
    steps.push(step)
    most = Math.max(most, step.gainLow95Db)
  }
  const near = steps.filter(({ gainLow95Db }) => gainLow95Db >= most - SAME_DB)
  const mostMiddle = Math.max(...near.map(({ gainDb }) => gainDb))
  return near.filter(({ gainDb }) => gainDb >= mostMiddle - SAME_DB).sort(byCost)[0] ?? null
}

/** The larger gain first. */
export function byGain(a: Gain, b: Gain): number {
  return b.gainLow95Db - a.gainLow95Db || b.gainDb - a.gainDb
}

function byCost(a: Step, b: Step): number {
  const area = a.areaLostM2 - b.areaLostM2
  if (Math.abs(area) > SAME_M2) return area
  const height = a.heightLostMm - b.heightLostMm
  if (Math.abs(height) > SAME_MM) return height
  return a.addedMassKg - b.addedMassKg || byGain(a, b)
}

import type { Path } from '#analysis/paths/answer.ts'
import { type AnswerInput, answerReceivers } from '#analysis/paths/answerReceivers.ts'
import { bestStep, byGain, type Step, trierFor } from '#analysis/paths/next/best.ts'
import { ductTrials } from '#analysis/paths/next/ductTrials.ts'
import { gapTrials, holeTrials } from '#analysis/paths/next/leakTrials.ts'
import { openingTrials, sealTrials } from '#analysis/paths/next/openingTrials.ts'
import { surfaceTrials } from '#analysis/paths/next/surfaceTrials.ts'
import type { Trial } from '#analysis/paths/next/trial.ts'
import { marginAt } from '#analysis/paths/next/tryOut.ts'
import type { SchemeChange } from '#analysis/scheme.ts'
import type { Decibels, Millimetres, SquareMetres } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

/** One thing that could be built differently, and what it would bring and cost. */
export interface NextStep {
  readonly pathId: string
  /** In the imperative: "Hang a second sealed door in the lining", "Build Wall 2 as clips + 2 boards". */
  readonly label: string
  readonly change: SchemeChange
  /** Of the margin, in the middle of its range and at its lower end. */
  readonly gainDb: Decibels
  readonly gainLow95Db: Decibels
  /** Floor area and lowest clear height it takes; negative: it gives back. */
  readonly areaLostM2: SquareMetres
  readonly heightLostMm: Millimetres
  /** Of the linings; what stands in openings is not weighed. */
  readonly addedMassKg: number
  /** Full sentences to read before it is built, life safety among them; they stand in full beside the step. */
  readonly cautions: readonly string[]
}

/**
 * The best single step for every path of a receiver, the best of all first: each by the whole answer computed anew with
 * that one change, since flanking follows the linings. Where one change is the best for several paths it stands once, with
 * the path that carries most. Empty where the margin is not known, and where every path is as good as the catalogue can
 * make it.
 * @param receiverId  a receiver of the input's room
 */
export function nextSteps(input: AnswerInput, receiverId: string): readonly NextStep[] {
  const receiver = input.receivers.find(({ id, room }) => id === receiverId && room === input.room.id)
  if (!receiver) return []
  const answer = answerReceivers({ ...input, receivers: [receiver] })[0]
  const now = marginAt(input, receiver)
  if (!answer || !now) return []
  const trier = trierFor(input, receiver, now)
  const steps = new Map<string, NextStep>()
  for (const { path } of answer.paths) {
    const step = bestStep(trialsFor(input, path), trier)
    const key = step && JSON.stringify(step.trial.change)
    if (step && key && !steps.has(key)) steps.set(key, stepFor(path, step))
  }
  return [...steps.values()].sort(byGain)
}

function stepFor(path: Path, { trial, cautions, ...figures }: Step): NextStep {
  return { pathId: path.id, label: trial.label, change: trial.change, ...figures, cautions }
}

/** Every single change that could weaken a path. */
function trialsFor(input: AnswerInput, { id, kind, element }: Path): readonly Trial[] {
  switch (kind) {
    case 'surface':
    case 'flanking':
      return surfaceTrials(input, element)
    case 'opening':
      return openingTrials(input, element)
    case 'leak':
      if (id.startsWith('seal:')) return sealTrials(input, element)
      return id.startsWith('hole:') ? holeTrials(input, element, id) : gapTrials(input, element)
    case 'duct':
      return ductTrials(input, element)
    default:
      return unreachable(kind)
  }
}

import type { Path } from '#analysis/paths/answer.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { bestStep, byGain, type Gain, isWorthIt, type Step, trierFor } from '#analysis/paths/next/best.ts'
import { ductTrials } from '#analysis/paths/next/ductTrials.ts'
import { gapTrials, holeTrials } from '#analysis/paths/next/leakTrials.ts'
import { openingTrials, sealTrials } from '#analysis/paths/next/openingTrials.ts'
import { surfaceTrials } from '#analysis/paths/next/surfaceTrials.ts'
import type { Trial } from '#analysis/paths/next/trial.ts'
import { type Heard, heardAt } from '#analysis/paths/next/tryOut.ts'
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
  /** Full sentences on how it is built, fire and load among them; they are never folded away. */
  readonly minds: readonly string[]
}

/**
 * The best single step for every path of a receiver, the best of all first: each by the whole answer computed anew with
 * that one change, since flanking follows the linings. Where one change is the best for several paths it stands once, with
 * the path whose closing would gain most. Empty where the margin is not known, and where every path is as good as the
 * catalogue can make it.
 * @param receiverId  a receiver of the input's room
 */
export function nextSteps(input: AnswerInput, receiverId: string): readonly NextStep[] {
  const work = nextStepsByPath(input, receiverId)
  for (;;) {
    const bit = work.next()
    if (bit.done) return bit.value
  }
}

/** The same a little at a time, a few milliseconds between two yields, so that a page can breathe between, or stop. */
export function* nextStepsByPath(
  input: AnswerInput,
  receiverId: string,
): Generator<undefined, readonly NextStep[], undefined> {
  const receiver = input.receivers.find(({ id, room }) => id === receiverId && room === input.room.id)
  const heard = receiver && heardAt(input, receiver)
  if (!receiver || !heard) return []
  const trier = trierFor(input, receiver, heard.margin)
  const steps = new Map<string, NextStep>()
  for (const path of worthwhile(input, heard)) {
    const step = yield* bestStep(trialsFor(input, path), trier)
    const key = step && JSON.stringify(step.trial.change)
    if (step && key && !steps.has(key)) steps.set(key, stepFor(path, step))
  }
  return [...steps.values()].sort(byGain)
}

/** The paths whose closing altogether, with whatever hangs on the same element, would gain enough; the greatest first. */
function worthwhile(input: AnswerInput, heard: Heard): readonly Path[] {
  return heard.energies
    .map(({ path }) => ({ path, ...mostGain(input, heard, path) }))
    .filter((gain) => isWorthIt(gain))
    .sort(byGain)
    .map(({ path }) => path)
}

/**
 * No step for a path can gain more than closing all that the step touches. What a thinner build-up gains by leaving a
 * larger room that swallows more is not counted: it weakens no path.
 */
function mostGain(input: AnswerInput, { energies, margin, marginOfOnly }: Heard, path: Path): Gain {
  const others = marginOfOnly(energies.filter((energy) => !isTouched(input, path, energy.path)))
  if (others === null) return { gainDb: Number.POSITIVE_INFINITY, gainLow95Db: Number.POSITIVE_INFINITY }
  return { gainDb: others.middle - margin.middle, gainLow95Db: others.low - margin.low }
}

/** Airtightness changes all gaps; a lining its surface with the gap, the holes and what runs along, and what is closed like it. */
function isTouched({ room }: AnswerInput, by: Path, other: Path): boolean {
  if (by.id.startsWith('leak:') && other.id.startsWith('leak:')) return true
  const wall = room.openings.find(({ id }) => id === other.element)?.wall
  return other.element === by.element || wall === by.element
}

function stepFor(path: Path, { trial, ...figures }: Step): NextStep {
  return { pathId: path.id, label: trial.label, change: trial.change, ...figures }
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

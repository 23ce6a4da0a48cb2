import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { SchemeChange } from '#analysis/scheme.ts'
import type { Decibels, Millimetres, SquareMetres } from '#units/quantity.ts'

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
  readonly addedMassKg: number
  /** Full sentences to read before it is built, life safety among them; they stand in full beside the step. */
  readonly cautions: readonly string[]
}

/**
 * The best single step for every path of a receiver, the best of all first; empty where the margin is not known.
 * @param receiverId  a receiver of the input's room
 */
export function nextSteps(_input: AnswerInput, _receiverId: string): readonly NextStep[] {
  return []
}

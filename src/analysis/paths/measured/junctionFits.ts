import { analyseScheme } from '#analysis/analyse.ts'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { type AnswerInput, answerReceivers } from '#analysis/paths/answerReceivers.ts'
import { type MeasuredOctave, measuredOctaves } from '#analysis/paths/measured/octaves.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { JUNCTION_CLASSES, type JunctionClass, type Measured, type Receiver } from '#analysis/target.ts'
import type { Decibels } from '#units/quantity.ts'

/** How well the room as it stands fits a measured baseline with one junction class. */
export interface JunctionFit {
  readonly junction: JunctionClass
  /** Root mean square over the octaves that can be compared. */
  readonly rmsDb: Decibels
}

/** The answer of the room with nothing built, for every junction class; null where the plan itself is refused. */
export type AsItStands = ReadonlyMap<JunctionClass, ReceiverAnswer>

/** What the receiver would hear of the room as it stands, by junction class; empty where the plan is refused. */
export function answersAsItStands(input: AnswerInput, receiver: Receiver): AsItStands {
  const { room, catalogue } = input
  const scheme: Scheme = { id: 'as-it-stands', name: 'As it stands', choices: {} }
  const analysed = analyseScheme({ room, scheme, catalogue, quality: 'plot' })
  if (!analysed.ok) return new Map()
  const receivers = JUNCTION_CLASSES.map((junction): Receiver => ({ ...receiver, junction }))
  const answers = answerReceivers({ ...input, scheme, result: analysed.value, receivers })
  return new Map(JUNCTION_CLASSES.flatMap((junction, k) => (answers[k] ? [[junction, answers[k]]] : [])))
}

/** Every class by how far it is off the measured set, the nearest first; those that cannot be compared are left out. */
export function junctionFits(measured: Measured, asItStands: AsItStands): readonly JunctionFit[] {
  return [...asItStands]
    .flatMap(([junction, answer]): JunctionFit[] => {
      const rmsDb = rmsOf(measuredOctaves(measured, answer))
      return rmsDb === null ? [] : [{ junction, rmsDb }]
    })
    .sort((a, b) => a.rmsDb - b.rmsDb)
}

function rmsOf(octaves: readonly MeasuredOctave[]): Decibels | null {
  const off = octaves.flatMap(({ measuredLessPredictedDb }) => measuredLessPredictedDb ?? [])
  if (off.length === 0) return null
  return Math.sqrt(off.reduce((sum, each) => sum + each ** 2, 0) / off.length)
}

import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { fitSentence } from '#analysis/paths/measured/fitWords.ts'
import {
  type AsItStands,
  answersAsItStands,
  type JunctionFit,
  junctionFits,
} from '#analysis/paths/measured/junctionFits.ts'
import { type MeasuredOctave, measuredOctaves } from '#analysis/paths/measured/octaves.ts'
import { listed } from '#analysis/paths/names.ts'
import type { Measured, Receiver } from '#analysis/target.ts'

/** One measured set beside the prediction. */
export interface MeasuredComparison {
  readonly measured: Measured
  /** What it is compared with: before is the room as it stands, after the scheme shown. */
  readonly against: 'as-it-stands' | 'scheme'
  readonly octaves: readonly MeasuredOctave[]
  /** How well every junction fits a baseline, the nearest first; empty for a set measured after. */
  readonly fits: readonly JunctionFit[]
  /** Full sentences: which junction fits, what was left out, why nothing can be compared. */
  readonly sentences: readonly string[]
}

/**
 * Every measured set of a receiver beside what is predicted: before against the room as it stands, with nothing built and
 * its openings as they are, after against the scheme shown.
 * @param answer  the receiver's, under the input's scheme
 */
export function measuredAgainst(
  input: AnswerInput,
  receiver: Receiver,
  answer: ReceiverAnswer,
): readonly MeasuredComparison[] {
  const isBaseline = receiver.measured.some(({ when }) => when === 'before')
  const asItStands: AsItStands = isBaseline ? answersAsItStands(input, receiver) : new Map()
  return receiver.measured.map((measured) =>
    measured.when === 'before' ? baseline(measured, receiver, asItStands) : built(measured, answer),
  )
}

function baseline(measured: Measured, receiver: Receiver, asItStands: AsItStands): MeasuredComparison {
  const answer = asItStands.get(receiver.junction)
  if (!answer) {
    const sentences = ['The plan of the room as it stands is refused, so nothing can be predicted for it.']
    return { measured, against: 'as-it-stands', octaves: [], fits: [], sentences }
  }
  const octaves = measuredOctaves(measured, answer)
  const fits = junctionFits(measured, asItStands)
  const fit = fitSentence(fits)
  const sentences = [...(fit === null ? [] : [fit]), ...missing(octaves, answer, 'the room as it stands')]
  return { measured, against: 'as-it-stands', octaves, fits, sentences }
}

function built(measured: Measured, answer: ReceiverAnswer): MeasuredComparison {
  const octaves = measuredOctaves(measured, answer)
  return { measured, against: 'scheme', octaves, fits: [], sentences: missing(octaves, answer, 'this scheme') }
}

/** What could not be compared, and why. */
function missing(octaves: readonly MeasuredOctave[], answer: ReceiverAnswer, of: string): readonly string[] {
  if (octaves.every(({ measuredDb }) => measuredDb === null)) {
    return ['No octave has a measured difference yet: type at least one.']
  }
  if (octaves.every(({ predictedDb }) => predictedDb === null)) {
    const why = answer.unknown.map((path) => path.why)
    return [`Nothing is predicted for ${of}, so the measured differences stand alone.`, ...why]
  }
  const left = octaves.filter(({ measuredLessPredictedDb }) => measuredLessPredictedDb === null)
  if (left.length === 0) return []
  const names = listed(left.map(({ hz }) => String(hz)))
  return [`Left out, since nothing was measured or predicted there: ${names} Hz.`]
}

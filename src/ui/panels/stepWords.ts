import { gainWords } from '#analysis/paths/answerWords.ts'
import type { NextStep } from '#analysis/paths/nextSteps.ts'
import { bothAreas, otherUnit } from '#ui/panels/words.ts'
import { formatArea, formatLength, formatMass } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** Hang a second sealed door in the lining: +4.3 dB, takes no floor. */
export function stepShort(step: NextStep, units: LengthUnit): string {
  const { label, gainDb, gainLow95Db, areaLostM2, heightLostMm } = step
  const height = takes(heightLostMm, (size) => formatLength(size, units), 'height')
  return [
    `${label}: ${gainWords(gainDb)}`,
    ...(gainLow95Db - gainDb >= MORE_DB ? [`${gainWords(gainLow95Db)} at the lower end`] : []),
    takes(areaLostM2, (size) => formatArea(size, units), 'floor'),
    ...(height === NO_HEIGHT ? [] : [height]),
  ].join(', ')
}

/** So much more at the lower end of the range is why a step is taken, and is told. @source our own choice */
const MORE_DB = 0.5

const NO_HEIGHT = 'takes no height'

/** At the lower end of the range +3.1 dB; takes 5.8 ft² · 0.54 m² of floor; takes no height; adds 120 lb · 54 kg. */
export function stepCosts({ gainLow95Db, areaLostM2, heightLostMm, addedMassKg }: NextStep, units: LengthUnit): string {
  const length = (mm: number) => `${formatLength(mm, units)} · ${formatLength(mm, otherUnit(units))}`
  const mass = (kg: number) => `${formatMass(kg, units)} · ${formatMass(kg, otherUnit(units))}`
  const added = mass(Math.abs(addedMassKg))
  return [
    `at the lower end of the range ${gainWords(gainLow95Db)}`,
    takes(areaLostM2, (size) => bothAreas(size, units), 'floor'),
    takes(heightLostMm, length, 'height'),
    ...(added === mass(0) ? [] : [`${addedMassKg > 0 ? 'adds' : 'takes off'} ${added}`]),
  ].join('; ')
}

function takes(size: number, text: (size: number) => string, what: string): string {
  if (text(Math.abs(size)) === text(0)) return `takes no ${what}`
  return `${size > 0 ? 'takes' : 'gives back'} ${text(Math.abs(size))} of ${what}`
}

/** Sentences that several steps ask to be read, and what is left to each. */
export interface SharedSentences {
  readonly shared: readonly string[]
  readonly own: (step: NextStep) => readonly string[]
}

/**
 * What must be read before more than one of the steps is said once, before all of them; what stands in full beside the
 * scheme already is not said again. A sentence with another figure in it is the same one.
 * @param said  sentences that stand in full already
 */
export function sharedSentences(steps: readonly NextStep[], said: readonly string[]): SharedSentences {
  const known = new Set(said.map(withoutFigures))
  const asked = steps.map((step) => new Map(step.cautions.map((text) => [withoutFigures(text), text] as const)))
  const all = asked.flatMap((texts) => [...texts.keys()])
  const isShared = (key: string) => all.indexOf(key) !== all.lastIndexOf(key)
  const shared = new Map(asked.flatMap((texts) => [...texts].filter(([key]) => isShared(key) && !known.has(key))))
  return {
    shared: [...shared.values()],
    own: ({ cautions }) =>
      cautions.filter((text) => !isShared(withoutFigures(text)) && !known.has(withoutFigures(text))),
  }
}

function withoutFigures(text: string): string {
  return text.replace(/\d[\d.,]*/g, '0')
}

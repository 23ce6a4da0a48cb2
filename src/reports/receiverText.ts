import { OCTAVES_HZ } from '#acoustics/bands.ts'
import {
  decidingWords,
  decisiveShare,
  gainWords,
  limitWords,
  marginInTable,
  notInMargin,
  shareWords,
  whereWords,
} from '#analysis/paths/answerWords.ts'
import type { NextStep } from '#analysis/paths/nextSteps.ts'
import type { Heard } from '#reports/heard.ts'
import { receiverNotes } from '#reports/receivers.ts'
import { fixed, formatArea, formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** How many paths stand in the line of shares. */
const TOLD_PATHS = 5

/** What a receiver hears, in words for a terminal, each line indented. */
export function receiverLines(heard: Heard, units: LengthUnit): readonly string[] {
  const { receiver, source, answer } = heard
  const played = source ? `${source.name}, ` : ''
  const verdict = answer.marginDb === null ? 'not known' : `${marginInTable(answer)}; ${answer.verdictWords}`
  const deciding = decidingWords(answer)
  return [
    `  receiver ${answer.name} (${played}limit ${limitWords(receiver.limit)}): ${verdict}${deciding ? `; ${deciding}` : ''}`,
    ...levelLines(heard),
    `    ${answer.sentence}`,
    ...shareLine(heard),
    ...answer.unknown.map(({ label, why }) => `    not known, ${label}: ${why}`),
    ...(heard.nextSteps ?? []).flatMap((step) => stepLines(step, units)),
    ...(heard.measured ?? []).map(
      ({ measured, sentences }) => `    measured, ${measured.name}: ${sentences.join(' ')}`,
    ),
    ...notIn(heard),
  ]
}

/** What no airborne figure holds, beside every margin it is true of. */
function notIn({ answer }: Heard): readonly string[] {
  const text = notInMargin(answer)
  return text === null ? [] : [`    ${text}`]
}

/** Every other note of a scheme's receivers once. */
export function receiverNoteLines(all: readonly Heard[]): readonly string[] {
  const said = new Set(all.flatMap(({ answer }) => [answer.sentence, notInMargin(answer)]))
  const texts = all.flatMap((heard) => receiverNotes(heard).map(({ text }) => text))
  return [...new Set(texts)].filter((text) => !said.has(text)).map((text) => `  note: ${text}`)
}

/** Level and limit by octave under each other, then what they are in one number. */
function levelLines({ answer }: Heard): readonly string[] {
  const row = (name: string, values: readonly (number | null)[]) =>
    `    ${name.padEnd(10)}${values.map((value) => (value === null ? '-' : fixed(value, 0)).padStart(6)).join('')}`
  const overall = [
    ...(answer.levelA === null ? [] : [`${fixed(answer.levelA, 0)} dBA`]),
    ...(answer.levelC === null ? [] : [`${fixed(answer.levelC, 0)} dBC`]),
    ...(answer.nic === null ? [] : [`NIC ${answer.nic}`]),
    ...(answer.siteLoss === null
      ? []
      : [`STC ${answer.siteLoss.laboratoryStc} as in a laboratory, ${answer.siteLoss.expectedStc} expected on site`]),
  ]
  return [
    row('Hz', OCTAVES_HZ),
    row('level, dB', answer.levelsDb),
    ...(answer.limitDb ? [row('limit, dB', answer.limitDb)] : []),
    ...(overall.length > 0 ? [`    ${overall.join('; ')}`] : []),
  ]
}

function shareLine({ answer }: Heard): readonly string[] {
  if (answer.paths.length === 0) return []
  const told = answer.paths.slice(0, TOLD_PATHS)
  const shares = told.map((share) => `${share.path.label} ${shareWords(decisiveShare(answer, share))}`)
  const rest = answer.paths.length - told.length
  const more = rest > 0 ? `, ${rest} more` : ''
  return [`    shares${whereWords(answer)}: ${shares.join(', ')}${more}`]
}

function stepLines(
  { label, gainDb, areaLostM2, heightLostMm, cautions }: NextStep,
  units: LengthUnit,
): readonly string[] {
  const costs = [
    takes(areaLostM2, formatArea(Math.abs(areaLostM2), units), 'floor'),
    takes(heightLostMm, formatLength(Math.abs(heightLostMm), units), 'height'),
  ].filter((cost) => cost !== '')
  return [
    `    next: ${label}: ${gainWords(gainDb)}${costs.map((cost) => `, ${cost}`).join('')}`,
    ...cautions.map((text) => `      caution: ${text}`),
  ]
}

function takes(size: number, text: string, what: string): string {
  if (!/[1-9]/.test(text)) return ''
  return `${size > 0 ? 'takes' : 'gives back'} ${text} of ${what}`
}

import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { decisiveShare, notInMargin, shareWords, whereWords } from '#analysis/paths/answerWords.ts'
import { limitPreset, sourcePreset } from '#analysis/presets.ts'
import type { LevelBasis, Receiver, Source } from '#analysis/target.ts'
import type { SheetHeard, SheetReceiver } from '#drawing/sheet/heard.ts'

/** How many paths are told one by one. */
const TOLD_PATHS = 6

const BASIS: Readonly<Record<LevelBasis, string>> = {
  seen: 'seen in print',
  memory: 'assumed, from memory',
  measured: 'typed, counted as measured',
}

/** Who hears what, in sentences: a part for every receiver with its heading. */
export function receiverTexts({
  receivers,
}: SheetHeard): readonly { readonly heading: string; readonly texts: readonly string[] }[] {
  return receivers.map(({ receiver, source, answer }) => ({
    heading: receiver.name,
    texts: [
      answer.sentence,
      ...answer.unknown.map(({ why }) => why),
      ...sharesText(answer),
      ...siteText(answer),
      ...playedText(source),
      limitText(receiver),
    ].filter((text, at, all) => all.indexOf(text) === at),
  }))
}

/** What is doubtful about the margins, each once, led by whom it is about where it is not about all. */
export function marginNotes({ receivers }: SheetHeard): readonly string[] {
  const spokenOf = new Map<string, SheetReceiver[]>()
  for (const one of receivers) {
    const notIn = notInMargin(one.answer)
    for (const { text } of one.answer.notes) {
      if (text === notIn) continue
      const others = spokenOf.get(text)
      if (others) others.push(one)
      else spokenOf.set(text, [one])
    }
  }
  return [...spokenOf].map(([text, about]) =>
    about.length === receivers.length ? text : `${about.map(({ receiver }) => receiver.name).join(', ')}: ${text}`,
  )
}

function sharesText(answer: ReceiverAnswer): readonly string[] {
  if (answer.marginDb === null || answer.paths.length === 0) return []
  const sorted = [...answer.paths].sort((a, b) => decisiveShare(answer, b) - decisiveShare(answer, a))
  const told = sorted.slice(0, TOLD_PATHS)
  const rest = sorted.slice(TOLD_PATHS)
  const left = rest.reduce((sum, path) => sum + decisiveShare(answer, path), 0)
  const more = rest.length === 0 ? [] : [`${rest.length} more ${shareWords(left)} together`]
  const shares = told.map((path) => `${path.path.label} ${shareWords(decisiveShare(answer, path))}`)
  return [`Shares${whereWords(answer)}: ${[...shares, ...more].join('; ')}.`]
}

function siteText({ siteLoss, nic }: ReceiverAnswer): readonly string[] {
  if (siteLoss === null) return []
  const { laboratoryStc, expectedStc } = siteLoss
  const measure = nic === null ? '' : ` Between the two rooms NIC ${nic} is predicted.`
  return [
    `All that is between, surfaces and openings: STC ${laboratoryStc} as in a laboratory; STC ${expectedStc} expected on site, with leaks, ducts and what goes round.${measure}`,
  ]
}

function playedText(source: Source | null): readonly string[] {
  if (source === null) return []
  const preset = sourcePreset(source.preset)
  const origin = preset === null || source.basis === 'measured' ? '' : `: ${preset.source}`
  return [`What is played: ${source.name}, levels ${BASIS[source.basis]}${origin}.`]
}

function limitText({ limitPreset: key }: Receiver): string {
  const preset = limitPreset(key)
  return preset === null
    ? 'The limit was typed; who asks for it is not said.'
    : `The limit is that of "${preset.name}": ${preset.source}. Status: ${preset.status}.`
}

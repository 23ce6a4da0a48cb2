import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import {
  BASIS_WORDS,
  decidingWords,
  decisiveShare,
  gainWords,
  heldWords,
  limitWords,
  marginInTable,
  marginRange,
  marginWords,
  notInMargin,
  PATH_KIND_WORDS,
  shareWords,
  weakestPath,
  whereWords,
} from '#analysis/paths/answerWords.ts'
import type { Source } from '#analysis/target.ts'
import { decibels } from '#ui/charts/curveWords.ts'
import { levelFigures } from '#ui/panels/answerFigures.ts'
import { DetailRows, LedgerLine } from '#ui/panels/ledger/LedgerLine.tsx'
import { SurfaceRatings } from '#ui/panels/ledger/quietLines.tsx'
import type { LineProps } from '#ui/panels/ledger/spaceLines.tsx'
import { TryNext } from '#ui/panels/ledger/TryNext.tsx'
import { Verdict } from '#ui/panels/Verdict.tsx'
import { listOf, signed } from '#ui/panels/words.ts'
import { useSession, useShownProject } from '#ui/session.ts'

export interface AnswerProps extends Pick<LineProps, 'cause' | 'result'> {
  /** The one the page speaks of. */
  readonly answer: ReceiverAnswer
  readonly answers: readonly ReceiverAnswer[]
  readonly answersBefore: readonly ReceiverAnswer[]
}

/** Quiet for whom: the margin of the receiver the page speaks of, with its range, and every other one beneath. */
export function MarginLine({ answer, answers, answersBefore, cause, result }: AnswerProps) {
  const { source, limit } = useHeldAgainst(answer)
  const before = answersBefore.find(({ receiverId }) => receiverId === answer.receiverId)
  return (
    <LedgerLine
      name={`Quiet for ${answer.name}`}
      figure={marginWords(answer.marginDb)}
      second={answer.marginDb === null ? undefined : <Verdict answer={answer} />}
      from={marginFrom(answer, source, limit)}
      change={changeWords(answer, before)}
      cause={cause}
      below={<Beneath answer={answer} others={answers.filter(({ receiverId }) => receiverId !== answer.receiverId)} />}
    >
      <DetailRows caption={`What ${answer.name} hears`} rows={marginRows(answer)} />
      <SurfaceRatings result={result} />
    </LedgerLine>
  )
}

/** likely −3 to +13 dB · tightest at 125 Hz · kit, hard sticks · NC-25. */
function marginFrom(answer: ReceiverAnswer, source: Source | null, limit: string): string {
  if (answer.marginDb === null) return answer.sentence
  return [marginRange(answer), decidingWords(answer), source?.name, limit].filter((part) => part != null).join(' · ')
}

function changeWords({ marginDb }: ReceiverAnswer, before: ReceiverAnswer | undefined): string | null {
  if (marginDb === null || before?.marginDb == null) return null
  const change = signed(marginDb - before.marginDb, decibels)
  return change && `${change}, from ${marginWords(before.marginDb)}`
}

function marginRows(answer: ReceiverAnswer): readonly (readonly [string, string])[] {
  return [
    ['Margin', marginInTable(answer)],
    ...levelFigures(answer),
    ...answer.unknown.map(({ label, why }) => [`${label}, not known`, why] as const),
  ]
}

interface BeneathProps {
  readonly answer: ReceiverAnswer
  readonly others: readonly ReceiverAnswer[]
}

/** What no airborne figure holds, and the other receivers: none of them is folded away. */
function Beneath({ answer, others }: BeneathProps) {
  const { view } = useSession()
  const notIn = notInMargin(answer)
  return (
    <>
      {notIn !== null && <p className="ledger-from">{notIn}</p>}
      {others.map((other) => (
        <button
          key={other.receiverId}
          type="button"
          className="ledger-other"
          onClick={() => view.setState({ receiverId: other.receiverId })}
        >
          <span>{other.name}</span>
          <span>{other.marginDb === null ? unknownShort(other) : marginInTable(other)}</span>
          {other.marginDb !== null && (
            <span>
              <Verdict answer={other} />
            </span>
          )}
        </button>
      ))}
    </>
  )
}

/** Not known: Side door and Back window; what is missing otherwise in its sentence. */
function unknownShort({ unknown, sentence }: ReceiverAnswer): string {
  return `Not known: ${unknown.length > 0 ? listOf(unknown.map(({ label }) => label)) : sentence}`
}

/** The path to work on, and the best step to take next. */
export function WeakestLine({ answer, answersBefore, cause }: AnswerProps) {
  const weakest = weakestPath(answer)
  if (weakest === null) return null
  const before = answersBefore.find(({ receiverId }) => receiverId === answer.receiverId)
  const former = before && weakestPath(before)
  const where = whereWords(answer)
  return (
    <LedgerLine
      name="Weakest path"
      aside={`${shareWords(decisiveShare(answer, weakest))}${where}`}
      figure={weakest.path.label}
      from={`${PATH_KIND_WORDS[weakest.path.kind]}, ${BASIS_WORDS[weakest.path.basis]} · closing it ${gainWords(weakest.gainIfClosedDb)}`}
      change={former && former.path.id !== weakest.path.id ? `was ${former.path.label}` : null}
      cause={cause}
      below={<TryNext answer={answer} />}
    >
      <p className="detail-note">{answer.sentence}</p>
      <DetailRows
        caption={`Share of every path${where}`}
        rows={answer.paths.map((share) => [share.path.label, shareWords(decisiveShare(answer, share))] as const)}
      />
    </LedgerLine>
  )
}

/** What is played for a receiver, and its limit in words. */
function useHeldAgainst(answer: ReceiverAnswer): { readonly source: Source | null; readonly limit: string } {
  const { receivers, sources } = useShownProject()
  const receiver = receivers.find(({ id }) => id === answer.receiverId)
  const source = sources.find(({ id }) => id === receiver?.source) ?? null
  return { source, limit: receiver ? heldWords(receiver) : limitWords(answer.limit) }
}

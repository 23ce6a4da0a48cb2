import type { ReceiverAnswer } from '#analysis/paths/answer.ts'

type Props = { readonly answer: Pick<ReceiverAnswer, 'verdict' | 'verdictWords'> }

/** What a margin means, in words; what may be too loud is warned of by a sign beside them. */
export function Verdict({ answer: { verdict, verdictWords } }: Props) {
  return (
    <>
      {(verdict === 'open' || verdict === 'does-not-meet') && <span className="warn-sign" aria-hidden="true" />}
      {verdictWords}
    </>
  )
}

import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { heldWords, marginRange, marginWords } from '#analysis/paths/answerWords.ts'
import { deleteReceiver } from '#state/commands/targets.ts'
import { useAnswers } from '#ui/answers.ts'
import { Heads, NothingYet } from '#ui/panels/bench/tables/rows.tsx'
import { AddReceiver } from '#ui/panels/bench/targets/AddReceiver.tsx'
import { Verdict } from '#ui/panels/Verdict.tsx'
import { useRoom, useSession, useShownProject } from '#ui/session.ts'

interface Props {
  /** The receiver in hand; null: none. */
  readonly pickedId: string | null
  readonly onPick: (id: string) => void
}

/** Who must not hear it, each with the margin it has under the scheme on the page. */
export function ReceiverList({ pickedId, onPick }: Props) {
  const room = useRoom()
  const answers = useAnswers()
  const receivers = useShownProject().receivers.filter((receiver) => receiver.room === room.id)
  return (
    <section className="target-list" aria-label="Who must not hear it">
      <h3>Who must not hear it</h3>
      {receivers.length === 0 ? (
        <NothingYet text="Nobody yet. Add a room behind one of the surfaces, a point outdoors, or this room itself." />
      ) : (
        <table className="figures">
          <caption className="visually-hidden">Receivers</caption>
          <Heads heads={['Receiver', 'Margin']} />
          <tbody>
            {receivers.map(({ id, name, source, limit, hasBeat }) => (
              <ReceiverRow
                key={id}
                id={id}
                name={name}
                sourceId={source}
                limit={heldWords({ limit, hasBeat })}
                answer={answers.find(({ receiverId }) => receiverId === id) ?? null}
                isPicked={id === pickedId}
                onPick={onPick}
              />
            ))}
          </tbody>
        </table>
      )}
      <Elsewhere />
      <AddReceiver onAdded={onPick} />
    </section>
  )
}

/** Receivers of the project's other rooms: they are said with their room. */
function Elsewhere() {
  const { id } = useRoom()
  const { rooms, receivers } = useShownProject()
  const others = receivers.flatMap((receiver) => {
    const room = receiver.room === id ? undefined : rooms.find((candidate) => candidate.id === receiver.room)
    return room ? [`${receiver.name} (${room.name})`] : []
  })
  if (others.length === 0) return null
  return <p className="table-note">Under another room of this project: {others.join(', ')}.</p>
}

interface RowProps {
  readonly id: string
  readonly name: string
  readonly sourceId: string | null
  readonly limit: string
  /** null: the plan is refused. */
  readonly answer: ReceiverAnswer | null
  readonly isPicked: boolean
  readonly onPick: (id: string) => void
}

function ReceiverRow({ id, name, sourceId, limit, answer, isPicked, onPick }: RowProps) {
  const { document } = useSession()
  const { sources } = useShownProject()
  return (
    <tr aria-current={isPicked ? 'true' : undefined}>
      <th scope="row">
        <button type="button" className="row-button" onClick={() => onPick(id)}>
          {name}
        </button>
        <span className="under">
          {sources.find((source) => source.id === sourceId)?.name ?? 'nothing chosen yet'} ·{' '}
          <span className="target-limit">{limit}</span>
        </span>
      </th>
      <td>{answer ? <Margin answer={answer} /> : 'not known'}</td>
      <td className="row-verbs">
        <button type="button" className="row-button" onClick={() => document.run(deleteReceiver(id))}>
          Delete<span className="visually-hidden"> {name}</span>
        </button>
      </td>
    </tr>
  )
}

function Margin({ answer }: { readonly answer: ReceiverAnswer }) {
  const range = marginRange(answer)
  return (
    <span>
      <strong className="target-margin">{marginWords(answer.marginDb)}</strong>
      {answer.marginDb !== null && (
        <>
          {' '}
          <span className="target-verdict">
            <Verdict answer={answer} />
          </span>
          {range !== null && <span className="under">{range}</span>}
        </>
      )}
    </span>
  )
}

import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { STRUCTURE_BORNE } from '#analysis/paths/answerNotes.ts'
import { heldWords, marginInTable, notInMargin } from '#analysis/paths/answerWords.ts'
import { projectAnswers } from '#state/answers.ts'
import type { ComparedScheme } from '#ui/panels/bench/Compare.tsx'
import { schemeTitle } from '#ui/panels/words.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

/** The margin of every receiver of the room under every scheme, one receiver a row. */
export function CompareMargins({ compared }: { readonly compared: readonly ComparedScheme[] }) {
  const project = useShownProject()
  const room = useRoom()
  const receivers = project.receivers.filter((receiver) => receiver.room === room.id)
  if (receivers.length === 0) return null
  const byScheme = compared.map(({ scheme, letter, result }) => ({
    title: schemeTitle(scheme.name, letter),
    answers: result ? projectAnswers(project, room, scheme, result) : [],
  }))
  const isAirborneOnly = byScheme.some(({ answers }) => answers.some((answer) => notInMargin(answer) !== null))
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: many schemes are wider than the page, and nothing in the table takes the focus there
    <section className="table-place" aria-label="Margins" tabIndex={0}>
      <table className="figures cards compare-margins">
        <caption>Margin at every receiver, with its likely range</caption>
        <thead>
          <tr>
            <th scope="col">Receiver</th>
            {byScheme.map(({ title }) => (
              <th key={title} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {receivers.map(({ id, name, limit, hasBeat }) => (
            <tr key={id}>
              <th scope="row">
                {name}, {heldWords({ limit, hasBeat })}
              </th>
              {byScheme.map(({ title, answers }) => (
                <MarginCell
                  key={title}
                  head={title}
                  answer={answers.find(({ receiverId }) => receiverId === id) ?? null}
                />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {isAirborneOnly && (
        <p className="table-note">{STRUCTURE_BORNE}; the lowest resonance of the build-ups stands with each margin.</p>
      )}
    </section>
  )
}

function MarginCell({ head, answer }: { readonly head: string; readonly answer: ReceiverAnswer | null }) {
  if (answer === null) return <td data-label={head}>unknown</td>
  return (
    <td data-label={head}>
      {marginInTable(answer)}
      <span className="under">{answer.marginDb === null ? answer.sentence : verdictOf(answer)}</span>
    </td>
  )
}

/** meets on paper; lowest resonance 44 Hz. */
function verdictOf(answer: ReceiverAnswer): string {
  if (notInMargin(answer) === null) return answer.verdictWords
  const lowest = answer.lowestResonanceHz === null ? 'none known' : `${Math.round(answer.lowestResonanceHz)} Hz`
  return `${answer.verdictWords}; lowest resonance: ${lowest}`
}

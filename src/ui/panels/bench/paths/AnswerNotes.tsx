import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { isOnFlanking, notInMargin } from '#analysis/paths/answerWords.ts'

/** What is true but doubtful about an answer, each in full; what stands above already is not said twice. */
export function AnswerNotes({ answer }: { readonly answer: ReceiverAnswer }) {
  const notIn = notInMargin(answer)
  const notes = answer.notes.filter((note) => note.text !== notIn && !isOnFlanking(note))
  return (
    <section className="paths-notes" aria-label="Notes">
      <ul className="bench-notes">
        {notes.map(({ text }) => (
          <li key={text}>{text}</li>
        ))}
        <li>
          This is airborne sound only. Footsteps, thuds and whatever shakes the structure go through it another way and
          are out of scope here: no number on this page stands for them.
        </li>
      </ul>
    </section>
  )
}

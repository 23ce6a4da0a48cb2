import type { RefObject } from 'react'
import type { Adding } from '#state/view.ts'
import { ADD_GROUPS, isSameAdding } from '#ui/canvas/addWords.ts'
import { takeUpAdding, takeUpCut } from '#ui/canvas/toolSwitch.ts'
import { useSession, useView } from '#ui/session.ts'

interface Props {
  /** The plan: it takes the focus, so that Enter puts the thing down. */
  readonly host: RefObject<HTMLElement | null>
  /** A verb was chosen. */
  onChosen(): void
}

/** What can be put into the room, written out in the order it is measured. */
export function AddRow({ host, onChosen }: Props) {
  const session = useSession()
  const adding = useView((view) => view.adding)
  const tool = useView((view) => view.tool)
  const toPlan = () => {
    onChosen()
    host.current?.focus({ preventScroll: true })
  }
  const choose = (next: Adding) => {
    takeUpAdding(session, isSameAdding(adding, next) ? null : next)
    toPlan()
  }
  return (
    <div className="add-row">
      {ADD_GROUPS.map(({ name, verbs }) => (
        <fieldset key={name} className="verbs">
          <legend className="visually-hidden">{name}</legend>
          {verbs.map((verb) => (
            <button
              key={verb.label}
              type="button"
              className="verb"
              aria-pressed={isSameAdding(adding, verb.adding)}
              onClick={() => choose(verb.adding)}
            >
              {verb.label}
            </button>
          ))}
        </fieldset>
      ))}
      <fieldset className="verbs">
        <legend className="visually-hidden">The room</legend>
        <button
          type="button"
          className="verb"
          aria-pressed={tool === 'cut'}
          onClick={() => {
            takeUpCut(session, tool !== 'cut')
            toPlan()
          }}
        >
          Cut in two
        </button>
      </fieldset>
    </div>
  )
}

import { useState } from 'react'
import type { ReceiverPlace } from '#analysis/target.ts'
import { addReceiver } from '#state/commands/targets.ts'
import { usualReceiver, usualSourceOf } from '#state/usualTargets.ts'
import { RECEIVER_KINDS } from '#ui/panels/bench/targets/targetWords.ts'
import { useAdding } from '#ui/panels/bench/targets/useTargets.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

interface Props {
  readonly onAdded: (id: string) => void
}

/** Adds who must not hear it: next door, outdoors, or the room itself with what comes in. */
export function AddReceiver({ onAdded }: Props) {
  const project = useShownProject()
  const room = useRoom()
  const [refused, setRefused] = useState<string | null>(null)
  const run = useAdding('receivers', onAdded)
  const add = (kind: ReceiverPlace['kind']) => {
    const receiver = usualReceiver(kind, room, project)
    setRefused(run(addReceiver(receiver, receiver.source === null ? usualSourceOf(kind) : null)))
  }
  return (
    <div className="add-target">
      <fieldset className="table-verbs" aria-label="Add a receiver">
        {RECEIVER_KINDS.map(({ kind, text }) => (
          <button key={kind} type="button" className="row-button" onClick={() => add(kind)}>
            Add {text}
          </button>
        ))}
      </fieldset>
      {refused !== null && (
        <p className="field-error" role="alert">
          <span className="warn-sign" aria-hidden="true" />
          {refused}
        </p>
      )}
    </div>
  )
}

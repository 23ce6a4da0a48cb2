import type { ReactNode } from 'react'
import type { Receiver } from '#analysis/target.ts'
import { changeReceiver } from '#state/commands/targets.ts'
import { TextField } from '#ui/fields/TextField.tsx'
import { HeardField } from '#ui/panels/bench/targets/HeardField.tsx'
import { JunctionFields } from '#ui/panels/bench/targets/JunctionFields.tsx'
import { LimitFields } from '#ui/panels/bench/targets/LimitFields.tsx'
import { MeasuredFields } from '#ui/panels/bench/targets/MeasuredFields.tsx'
import { PlaceFields } from '#ui/panels/bench/targets/PlaceFields.tsx'
import { TargetAnswer } from '#ui/panels/bench/targets/TargetAnswer.tsx'
import { ThroughFields } from '#ui/panels/bench/targets/ThroughFields.tsx'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useKeepsKeyboard } from '#ui/useKeepsKeyboard.ts'

/** What one part of the form needs. */
export interface ReceiverProps {
  readonly receiver: Receiver
  /** The sentence of a refusal, or null. */
  readonly change: (patch: Partial<Omit<Receiver, 'id'>>) => string | null
}

/** Everything that can be said of one receiver, and above it what that comes to. */
export function ReceiverForm({ receiver }: { readonly receiver: Receiver }) {
  const run = useRun()
  const { id, name } = receiver
  const props: ReceiverProps = { receiver, change: (patch) => run(changeReceiver(id, patch)) }
  return (
    <form className="target-form" aria-label={name} onSubmit={(event) => event.preventDefault()}>
      <TargetAnswer receiver={receiver} />
      <Group legend="Who hears what">
        <TextField name={`${id}-name`} label="Name" value={name} onCommit={(text) => props.change({ name: text })} />
        <HeardField receiver={receiver} />
      </Group>
      <Group legend={receiver.place.kind === 'this-room' ? 'This room' : 'Where it is'}>
        <PlaceFields {...props} />
      </Group>
      <Group legend="How much is too much">
        <LimitFields {...props} />
      </Group>
      <Group legend={receiver.place.kind === 'this-room' ? 'What it comes in through' : 'What it is heard through'}>
        <ThroughFields {...props} />
      </Group>
      {receiver.place.kind === 'room' && (
        <Group legend="How the building goes on">
          <JunctionFields {...props} />
        </Group>
      )}
      <Group legend="Measured on site">
        <MeasuredFields receiver={receiver} />
      </Group>
    </form>
  )
}

function Group({ legend, children }: { readonly legend: string; readonly children: ReactNode }) {
  const place = useKeepsKeyboard<HTMLFieldSetElement>()
  return (
    <fieldset ref={place} tabIndex={-1} className="target-group">
      <legend>{legend}</legend>
      {children}
    </fieldset>
  )
}

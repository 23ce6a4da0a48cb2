import { named } from '#analysis/paths/names.ts'
import type { Measured, Receiver } from '#analysis/target.ts'
import { changeMeasured, deleteMeasured } from '#state/commands/targets.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { TextField } from '#ui/fields/TextField.tsx'
import { AddMeasured } from '#ui/panels/bench/targets/AddMeasured.tsx'
import { OctaveFields } from '#ui/panels/bench/targets/OctaveFields.tsx'
import { useRun } from '#ui/panels/bench/useBench.ts'

export const WHEN: readonly { readonly value: Measured['when']; readonly text: string }[] = [
  { value: 'before', text: 'Before building' },
  { value: 'after', text: 'After building' },
]

/** Level differences measured on site, before or after; the Paths view sets them beside the prediction. */
export function MeasuredFields({ receiver }: { readonly receiver: Receiver }) {
  return (
    <>
      <p className="bench-said">{measuredWords(receiver)}</p>
      {receiver.measured.map((measured) => (
        <MeasuredSet key={measured.id} receiver={receiver} measured={measured} />
      ))}
      <AddMeasured receiver={receiver} />
    </>
  )
}

/** What is to be typed, from which side to which, and what it is good for. */
function measuredWords({ name, place }: Receiver): string {
  const levels =
    place.kind === 'this-room'
      ? 'Level at the wall outside less level in this room'
      : `Level in the room less level at ${named(name)}`
  const fits = place.kind === 'room' ? '; one from before building tells which junction fits' : ''
  return `${levels}, by octave. Paths sets it beside the prediction${fits}.`
}

function MeasuredSet({ receiver, measured }: { readonly receiver: Receiver; readonly measured: Measured }) {
  const run = useRun()
  const { id, name, when, differenceDb } = measured
  const change = (patch: Partial<Omit<Measured, 'id'>>) => run(changeMeasured(receiver.id, id, patch))
  return (
    <fieldset className="measured-set" aria-label={name}>
      <TextField name={`${id}-name`} label="Name" value={name} onCommit={(text) => change({ name: text })} />
      <ChoiceField<Measured['when']>
        name={`${id}-when`}
        label="Measured"
        value={when}
        options={WHEN}
        onChoose={(now) => change({ when: now })}
      />
      <OctaveFields
        name={id}
        legend={`Level difference by octave, dB, ${name}`}
        what="a level difference"
        example={35}
        values={differenceDb}
        onCommit={(values) => change({ differenceDb: values })}
      />
      <button type="button" className="row-button" onClick={() => run(deleteMeasured(receiver.id, id))}>
        Delete<span className="visually-hidden"> {name}</span>
      </button>
    </fieldset>
  )
}

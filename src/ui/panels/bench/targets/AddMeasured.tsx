import { useState } from 'react'
import { OCTAVE_KEYS, type OctaveValues, octaveValues } from '#acoustics/bands.ts'
import type { Receiver } from '#analysis/target.ts'
import { addMeasured } from '#state/commands/targets.ts'
import { OctaveFields } from '#ui/panels/bench/targets/OctaveFields.tsx'
import { readSpectrum, spectrumText } from '#ui/panels/bench/targets/spectrum.ts'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'

const NOTHING: OctaveValues = octaveValues([])

/** What was typed before something else was looked at. */
function keptValues(text: string | null): OctaveValues {
  const read = text === null ? null : readSpectrum(text)
  return read?.ok ? read.value : NOTHING
}

/** Begins a measured set: its octaves are typed first, for a set without a value is none. */
export function AddMeasured({ receiver }: { readonly receiver: Receiver }) {
  const run = useRun()
  const kept = useKept()(`${receiver.id}-measured-draft`)
  const [isOpen, setOpen] = useState(kept.text !== null)
  const [values, setValues] = useState(() => keptValues(kept.text))
  const [refused, setRefused] = useState<string | null>(null)
  const setDraft = (typed: OctaveValues) => {
    setValues(typed)
    const text = spectrumText(typed)
    kept.keep(text === '' ? null : text, null)
  }
  const keep = () => {
    const when = receiver.measured.some((set) => set.when === 'before') ? 'after' : 'before'
    const name = `Measured ${when}`
    const says = run(addMeasured(receiver.id, { name, when, differenceDb: values }))
    setRefused(says)
    if (says !== null) return
    setDraft(NOTHING)
    setOpen(false)
  }
  if (!isOpen) {
    return (
      <button type="button" className="row-button" onClick={() => setOpen(true)}>
        Type level differences
      </button>
    )
  }
  const isEmpty = OCTAVE_KEYS.every((key) => values[key] === null)
  return (
    <fieldset className="measured-set" aria-label="Level differences to be added">
      <OctaveFields
        name={`${receiver.id}-measured-new`}
        legend="Level difference by octave, dB"
        what="a level difference"
        example={35}
        values={values}
        onCommit={(typed) => {
          setDraft(typed)
          return null
        }}
      />
      <div className="table-verbs">
        <button type="button" className="row-button" onClick={keep}>
          Keep them
        </button>
        <button type="button" className="row-button" disabled={!isEmpty} onClick={() => setOpen(false)}>
          Leave it
        </button>
      </div>
      {refused !== null && (
        <p className="field-error" role="alert">
          <span className="warn-sign" aria-hidden="true" />
          {refused}
        </p>
      )}
    </fieldset>
  )
}

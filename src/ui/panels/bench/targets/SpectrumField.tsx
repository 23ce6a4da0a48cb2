import { useId } from 'react'
import type { OctaveValues } from '#acoustics/bands.ts'
import { FieldFrame } from '#ui/fields/FieldFrame.tsx'
import { useTyped } from '#ui/fields/useTyped.ts'
import { isSameSpectrum, readSpectrum, spectrumText } from '#ui/panels/bench/targets/spectrum.ts'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'

interface Props {
  readonly name: string
  /** What the values are of: read aloud. */
  readonly of: string
  readonly values: OctaveValues
  readonly onCommit: (values: OctaveValues) => string | null
}

const HINT = '63 to 4000 Hz, parted by spaces; – where it is not known.'

/** All octaves as one line of numbers: typed, or pasted from a table. */
export function SpectrumField({ name, of, values, onCommit }: Props) {
  const id = useId()
  const kept = useKept()(name)
  const typed = useTyped<OctaveValues>({
    value: values,
    show: spectrumText,
    read: readSpectrum,
    isSame: isSameSpectrum,
    commit: onCommit,
    step: null,
    kept,
  })
  return (
    <FieldFrame id={id} name={name} label="Seven values, dB" of={of} hint={HINT} error={typed.error}>
      <input
        id={id}
        name={name}
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        className="field-input"
        value={typed.text}
        aria-invalid={typed.error !== null}
        aria-describedby={`${id}-says`}
        onChange={(event) => typed.change(event.target.value)}
        onBlur={typed.leave}
        onKeyDown={typed.press}
      />
    </FieldFrame>
  )
}

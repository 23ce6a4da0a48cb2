import { OCTAVE_KEYS, type OctaveValues } from '#acoustics/bands.ts'
import { NumberField } from '#ui/fields/NumberField.tsx'
import { SpectrumField } from '#ui/panels/bench/targets/SpectrumField.tsx'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'

interface Props {
  /** Begins the names of its fields. */
  readonly name: string
  readonly legend: string
  /** What one value is, as a sentence begins: "a level". */
  readonly what: string
  /** A value such as one has, for whoever typed none; that of a level unless said. */
  readonly example?: number
  readonly values: OctaveValues
  /** A sentence when the values were refused, null when they were taken. */
  readonly onCommit: (values: OctaveValues) => string | null
}

/** One value an octave, each in a field of its own; or all of them in one line, as a meter or a table gives them. */
export function OctaveFields({ name, legend, what, example = 95, values, onCommit }: Props) {
  const kept = useKept()
  return (
    <fieldset className="octave-fields">
      <legend className="field-label">{legend}</legend>
      <div className="octave-cells">
        {OCTAVE_KEYS.map((key) => (
          <NumberField
            key={key}
            name={`${name}-${key}`}
            label={key}
            of={`Hz, ${legend}`}
            unit="dB"
            what={`At ${key} Hz ${what}`}
            example={example}
            value={values[key]}
            canBeEmpty
            onCommit={(value) => onCommit({ ...values, [key]: value })}
            kept={kept(`${name}-${key}`)}
          />
        ))}
      </div>
      <details className="octave-line">
        <summary>All seven in one line</summary>
        <SpectrumField name={`${name}-line`} of={legend} values={values} onCommit={onCommit} />
      </details>
    </fieldset>
  )
}

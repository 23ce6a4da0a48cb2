import { useId, useState } from 'react'
import { FieldFrame, type FieldLabel } from '#ui/fields/FieldFrame.tsx'

export interface Option<Value extends string> {
  readonly value: Value
  readonly text: string
}

interface Props<Value extends string> extends FieldLabel {
  /** null: the selected things differ. */
  readonly value: Value | null
  readonly options: readonly Option<Value>[]
  readonly hint?: string | null | undefined
  /** May answer with the sentence of a refusal, which is shown under the list; anything else it answers is let be. */
  readonly onChoose: (value: Value) => unknown
}

/** One of several, as a native list. */
export function ChoiceField<Value extends string>(props: Props<Value>) {
  const { name, label, quiet, of, value, options, hint = null, onChoose } = props
  const id = useId()
  const [refused, setRefused] = useState<{ readonly value: Value | null; readonly text: string } | null>(null)
  const error = refused !== null && refused.value === value ? refused.text : null
  const choose = (text: string) => {
    const chosen = options.find((option) => option.value === text)
    if (!chosen) return
    const answer = onChoose(chosen.value)
    setRefused(typeof answer === 'string' ? { value, text: answer } : null)
  }
  return (
    <FieldFrame id={id} name={name} label={label} quiet={quiet} of={of} hint={hint} error={error}>
      <select
        id={id}
        name={name}
        className="field-input"
        value={value ?? ''}
        aria-invalid={error !== null}
        aria-describedby={hint === null && error === null ? undefined : `${id}-says`}
        onChange={(event) => choose(event.target.value)}
      >
        {value === null && <option value="">They differ</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </FieldFrame>
  )
}

import { useId } from 'react'
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
  readonly onChoose: (value: Value) => void
}

/** One of several, as a native list. */
export function ChoiceField<Value extends string>(props: Props<Value>) {
  const { name, label, quiet, value, options, hint = null, onChoose } = props
  const id = useId()
  return (
    <FieldFrame id={id} name={name} label={label} quiet={quiet} hint={hint} error={null}>
      <select
        id={id}
        name={name}
        className="field-input"
        value={value ?? ''}
        aria-describedby={hint === null ? undefined : `${id}-says`}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.target.value)
          if (chosen) onChoose(chosen.value)
        }}
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

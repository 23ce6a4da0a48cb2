import { useId } from 'react'
import { FieldFrame, type FieldLabel } from '#ui/fields/FieldFrame.tsx'
import { useTyped } from '#ui/fields/useTyped.ts'
import { ok } from '#units/result.ts'

interface Props extends FieldLabel {
  readonly value: string
  readonly onCommit: (value: string) => string | null
}

/** One line of the user's own words. */
export function TextField({ name, label, quiet, of, value, onCommit }: Props) {
  const id = useId()
  const typed = useTyped<string>({
    value,
    show: (text) => text,
    read: ok,
    isSame: (a, b) => a === b,
    commit: onCommit,
    step: null,
  })
  return (
    <FieldFrame id={id} name={name} label={label} quiet={quiet} of={of} hint={null} error={typed.error}>
      <input
        id={id}
        name={name}
        type="text"
        className="field-input"
        value={typed.text}
        onChange={(event) => typed.change(event.target.value)}
        onBlur={typed.leave}
        onKeyDown={typed.press}
      />
    </FieldFrame>
  )
}

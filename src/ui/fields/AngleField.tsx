import { useId } from 'react'
import { FieldFrame, type FieldLabel } from '#ui/fields/FieldFrame.tsx'
import { angleText, readAngle } from '#ui/fields/readAngle.ts'
import { useTyped } from '#ui/fields/useTyped.ts'

interface Props extends FieldLabel {
  /** Degrees, counter-clockwise. */
  readonly value: number
  readonly compact?: boolean | undefined
  readonly onCommit: (value: number) => string | null
}

/** An angle in degrees; arrow keys turn by 1, with Shift by 15. */
export function AngleField({ name, label, quiet, value, compact = false, onCommit }: Props) {
  const id = useId()
  const typed = useTyped({
    value,
    show: angleText,
    read: readAngle,
    isSame: (a, b) => a === b,
    commit: onCommit,
    step: (angle, up, big) => angle + (up ? 1 : -1) * (big ? 15 : 1),
  })
  return (
    <FieldFrame id={id} name={name} label={label} quiet={quiet} hint={null} error={typed.error}>
      <input
        id={id}
        name={name}
        type="text"
        autoComplete="off"
        spellCheck={false}
        className={compact ? 'field-input field-compact' : 'field-input'}
        value={typed.text}
        aria-invalid={typed.error !== null}
        aria-describedby={typed.error !== null ? `${id}-says` : undefined}
        onChange={(event) => typed.change(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={typed.leave}
        onKeyDown={typed.press}
      />
    </FieldFrame>
  )
}

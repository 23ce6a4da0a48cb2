import { useId } from 'react'
import { FieldFrame, type FieldLabel } from '#ui/fields/FieldFrame.tsx'
import { type NumberReading, numberText, readNumber } from '#ui/fields/readNumber.ts'
import { type KeptText, useTyped } from '#ui/fields/useTyped.ts'
import { ok } from '#units/result.ts'

interface Props extends FieldLabel, NumberReading {
  /** null: nobody has said. */
  readonly value: number | null
  /** An empty field says that nobody knows; absent: it must not be empty. */
  readonly canBeEmpty?: boolean | undefined
  readonly hint?: string | null | undefined
  readonly compact?: boolean | undefined
  /** What an arrow key adds; with Shift ten times as much. */
  readonly step?: number | undefined
  /** A sentence when the number was refused, null when it was taken. */
  readonly onCommit: (value: number | null) => string | null
  readonly kept?: KeptText | undefined
}

/** A number with its unit, which may stay unsaid where that is allowed. */
export function NumberField(props: Props) {
  const { name, label, quiet, of, value, canBeEmpty = false, hint = null, compact = false, step = 1 } = props
  const { unit, what, example, onCommit, kept } = props
  const id = useId()
  const typed = useTyped<number | null>({
    value,
    show: (number) => (number === null ? '' : numberText(number)),
    read: (text) => (text.trim() === '' && canBeEmpty ? ok(null) : readNumber(text, { unit, what, example })),
    isSame: (a, b) => a === b,
    commit: onCommit,
    step: (number, up, big) => (number ?? example) + (up ? 1 : -1) * step * (big ? 10 : 1),
    kept,
  })
  const isDescribed = hint !== null || typed.error !== null
  return (
    <FieldFrame id={id} name={name} label={label} quiet={quiet} of={of} hint={hint} error={typed.error}>
      <input
        id={id}
        name={name}
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        className={compact ? 'field-input field-compact' : 'field-input'}
        value={typed.text}
        aria-invalid={typed.error !== null}
        aria-describedby={isDescribed ? `${id}-says` : undefined}
        onChange={(event) => typed.change(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={typed.leave}
        onKeyDown={typed.press}
      />
    </FieldFrame>
  )
}

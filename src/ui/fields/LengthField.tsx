import { useId } from 'react'
import { FieldFrame, type FieldLabel } from '#ui/fields/FieldFrame.tsx'
import { bothReadings, isSameLength, type LengthLimits, lengthText, nudge, readLength } from '#ui/fields/readLength.ts'
import { type KeptText, useTyped } from '#ui/fields/useTyped.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

interface Props extends FieldLabel, LengthLimits {
  readonly value: Millimetres
  readonly unit: LengthUnit
  /** A sentence when the length was refused, null when it was taken. */
  readonly onCommit: (value: Millimetres) => string | null
  /** In a table the reading shows only while somebody types. */
  readonly compact?: boolean | undefined
  readonly kept?: KeptText | undefined
}

/** A length typed in any unit, read back in both. */
export function LengthField(props: Props) {
  const { name, label, quiet, of, value, unit, onCommit, leastMm, moreThanLeast, compact = false, kept } = props
  const id = useId()
  const typed = useTyped({
    value,
    show: (length) => lengthText(length, unit),
    read: (text) => readLength(text, unit, { leastMm, moreThanLeast }),
    isSame: isSameLength,
    commit: onCommit,
    step: (length, up, big) => length + (up ? 1 : -1) * nudge(unit, big),
    kept,
  })
  const hint = compact && typed.reading === null ? null : bothReadings(typed.reading ?? value, unit)
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
        aria-describedby={hint !== null || typed.error !== null ? `${id}-says` : undefined}
        onChange={(event) => typed.change(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={typed.leave}
        onKeyDown={typed.press}
      />
    </FieldFrame>
  )
}

import { useId } from 'react'
import { FieldFrame, type FieldLabel } from '#ui/fields/FieldFrame.tsx'
import { useTyped } from '#ui/fields/useTyped.ts'
import { fail, ok, type Result } from '#units/result.ts'

interface Props extends FieldLabel {
  readonly value: number
  /** Written after the number, such as %. */
  readonly unitWord: string
  readonly least?: number | undefined
  readonly onCommit: (value: number) => string | null
}

/** A plain number with its unit in words. */
export function NumberField({ name, label, quiet, value, unitWord, least, onCommit }: Props) {
  const id = useId()
  const typed = useTyped({
    value,
    show: String,
    read: (text) => readNumber(text, least),
    isSame: (a, b) => a === b,
    commit: onCommit,
    step: (number, up, big) => number + (up ? 1 : -1) * (big ? 10 : 1),
  })
  return (
    <FieldFrame id={id} name={name} label={label} quiet={quiet} hint={unitWord} error={typed.error}>
      <input
        id={id}
        name={name}
        type="text"
        inputMode="decimal"
        autoComplete="off"
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

/** A typed number, decimal point or comma. */
export function readNumber(text: string, least: number | undefined): Result<number, string> {
  const tidy = text.trim().replace(',', '.')
  const value = Number(tidy)
  if (tidy === '' || !Number.isFinite(value)) return fail(`"${text.trim()}" is not a number: write it like 12 or 12.5.`)
  if (least !== undefined && value < least) return fail(`It cannot be less than ${least}.`)
  return ok(value)
}

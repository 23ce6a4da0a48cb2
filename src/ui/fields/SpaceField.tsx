import { useId } from 'react'
import { FieldFrame, type FieldLabel } from '#ui/fields/FieldFrame.tsx'
import { bothSpaces, isSameSpace, readSpace, type SpaceKind, spaceText } from '#ui/fields/readSpace.ts'
import { type KeptText, useTyped } from '#ui/fields/useTyped.ts'
import type { LengthUnit } from '#units/quantity.ts'
import { fail } from '#units/result.ts'

interface Props extends FieldLabel {
  readonly kind: SpaceKind
  /** m2 or m3; null: still to be typed. */
  readonly value: number | null
  readonly unit: LengthUnit
  readonly onCommit: (value: number) => string | null
  readonly kept?: KeptText | undefined
}

/** An area or a volume typed in either unit, read back in both. */
export function SpaceField({ name, label, quiet, kind, value, unit, onCommit, kept }: Props) {
  const id = useId()
  const typed = useTyped<number | null>({
    value,
    show: (space) => (space === null ? '' : spaceText(space, unit, kind)),
    read: (text) => (text.trim() === '' ? fail('Type a number with its unit.') : readSpace(text, unit, kind)),
    isSame: (a, b) => isSameSpace(a, b, unit, kind),
    commit: (space) => (space === null ? null : onCommit(space)),
    step: null,
    kept,
  })
  const read = typed.reading ?? value
  return (
    <FieldFrame
      id={id}
      name={name}
      label={label}
      quiet={quiet}
      hint={read === null ? null : bothSpaces(read, unit, kind)}
      error={typed.error}
    >
      <input
        id={id}
        name={name}
        type="text"
        autoComplete="off"
        spellCheck={false}
        className="field-input"
        value={typed.text}
        aria-invalid={typed.error !== null}
        aria-describedby={read === null && typed.error === null ? undefined : `${id}-says`}
        onChange={(event) => typed.change(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={typed.leave}
        onKeyDown={typed.press}
      />
    </FieldFrame>
  )
}

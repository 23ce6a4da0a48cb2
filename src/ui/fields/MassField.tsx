import { useId } from 'react'
import { FieldFrame, type FieldLabel } from '#ui/fields/FieldFrame.tsx'
import { bothMasses, readSurfaceMass } from '#ui/fields/readSurfaceMass.ts'
import { type KeptText, useTyped } from '#ui/fields/useTyped.ts'
import { formatSurfaceMass } from '#units/format.ts'
import type { KilogramsPerSquareMetre, LengthUnit } from '#units/quantity.ts'
import { ok } from '#units/result.ts'

interface Props extends FieldLabel {
  /** null: as the density of its material says. */
  readonly value: KilogramsPerSquareMetre | null
  /** What an empty field stands for; absent: it must not be empty. */
  readonly emptyMeans?: string | undefined
  readonly unit: LengthUnit
  readonly onCommit: (value: KilogramsPerSquareMetre | null) => string | null
  readonly kept?: KeptText | undefined
}

/** A weight over an area, typed in either unit, read back in both. */
export function MassField({ name, label, quiet, value, emptyMeans, unit, onCommit, kept }: Props) {
  const id = useId()
  const typed = useTyped<KilogramsPerSquareMetre | null>({
    value,
    show: (mass) => (mass === null ? '' : formatSurfaceMass(mass, unit)),
    read: (text) => (text.trim() === '' && emptyMeans !== undefined ? ok(null) : readSurfaceMass(text, unit)),
    isSame: (a, b) => a === b || (a !== null && b !== null && Math.abs(a - b) < SAME_KG_M2),
    commit: onCommit,
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
      hint={read === null ? (emptyMeans ?? null) : bothMasses(read, unit)}
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
        aria-describedby={`${id}-says`}
        onChange={(event) => typed.change(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={typed.leave}
        onKeyDown={typed.press}
      />
    </FieldFrame>
  )
}

/** Weights this near are the same one. */
const SAME_KG_M2 = 1e-6

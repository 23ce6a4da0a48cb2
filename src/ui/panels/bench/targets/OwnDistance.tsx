import { useId } from 'react'
import type { Receiver, Through } from '#analysis/target.ts'
import { FieldFrame } from '#ui/fields/FieldFrame.tsx'
import { bothReadings, isSameLength, lengthText, readLength } from '#ui/fields/readLength.ts'
import { useTyped } from '#ui/fields/useTyped.ts'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { useShownProject } from '#ui/session.ts'
import type { Millimetres } from '#units/quantity.ts'
import { ok } from '#units/result.ts'

interface Props {
  readonly receiver: Receiver
  readonly part: Through
  readonly label: string
  /** undefined: as far as the room. A sentence when it was refused, null when it was taken. */
  readonly onSet: (distanceMm: Millimetres | undefined) => string | null
}

/** How far the receiver is from one surface, where that differs; empty: as far as from the room. */
export function OwnDistance({ receiver, part, label, onSet }: Props) {
  const id = useId()
  const { units } = useShownProject()
  const name = `${receiver.id}-distance-${part.surface}`
  const kept = useKept()(name)
  const typed = useTyped<Millimetres | null>({
    value: part.distanceMm ?? null,
    show: (length) => (length === null ? '' : lengthText(length, units)),
    read: (text) => (text.trim() === '' ? ok(null) : readLength(text, units)),
    isSame: (a, b) => a === b || (a !== null && b !== null && isSameLength(a, b)),
    commit: (length) => onSet(length ?? undefined),
    step: null,
    kept,
  })
  const hint = typed.reading === null ? null : bothReadings(typed.reading, units)
  return (
    <FieldFrame id={id} name={name} label="Distance from it" of={label} quiet hint={hint} error={typed.error}>
      <input
        id={id}
        name={name}
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        className="field-input field-compact"
        placeholder="as the room"
        value={typed.text}
        aria-invalid={typed.error !== null}
        aria-describedby={hint === null && typed.error === null ? undefined : `${id}-says`}
        onChange={(event) => typed.change(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={typed.leave}
        onKeyDown={typed.press}
      />
    </FieldFrame>
  )
}

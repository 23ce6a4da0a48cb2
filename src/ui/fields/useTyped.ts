import { type KeyboardEvent, useState } from 'react'
import type { Result } from '#units/result.ts'

/** Where a text that could not be read, or was refused, is kept while its field is not on the page. */
export interface KeptText {
  readonly text: string | null
  /** Why it was refused; absent: it is asked again whether it can be read. */
  readonly says?: string | null | undefined
  readonly keep: (text: string | null, says: string | null) => void
}

interface TypedInput<Value> {
  readonly value: Value
  readonly show: (value: Value) => string
  readonly read: (text: string) => Result<Value, string>
  readonly isSame: (a: Value, b: Value) => boolean
  /** Carries the value out; a sentence when it was refused, null when it was taken. */
  readonly commit: (value: Value) => string | null
  /** The value an arrow key leads to; null: arrow keys do nothing. */
  readonly step: ((value: Value, up: boolean, big: boolean) => Value) | null
  /** Absent: what cannot be read lives as long as its field. */
  readonly kept?: KeptText | undefined
}

export interface Typed<Value> {
  readonly text: string
  /** What the typed text says so far; null while nobody types or it cannot be read. */
  readonly reading: Value | null
  readonly error: string | null
  readonly change: (text: string) => void
  readonly leave: () => void
  readonly press: (event: KeyboardEvent<HTMLInputElement>) => void
}

/**
 * A text field bound to a value: commits on Enter or on leaving, Escape brings the former text back. What could not be
 * read stays in the field with a sentence, and the former value stands.
 */
export function useTyped<Value>(input: TypedInput<Value>): Typed<Value> {
  const { kept } = input
  const [draft, setDraft] = useState<string | null>(kept?.text ?? null)
  const [refused, setRefused] = useState<string | null>(() => whyUnread(input))
  const read = draft === null ? null : input.read(draft)

  const commitValue = (value: Value) => {
    const refusal = input.isSame(value, input.value) ? null : input.commit(value)
    setRefused(refusal)
    if (refusal === null) setDraft(null)
    kept?.keep(refusal === null ? null : draft, refusal)
  }
  const commit = () => {
    if (read === null) return
    if (read.ok) commitValue(read.value)
    else {
      setRefused(read.error)
      kept?.keep(draft, read.error)
    }
  }
  const restore = () => {
    setDraft(null)
    setRefused(null)
    kept?.keep(null, null)
  }
  const stepBy = (event: KeyboardEvent<HTMLInputElement>) => {
    if (!input.step || (read && !read.ok)) return
    event.preventDefault()
    commitValue(input.step(read?.ok ? read.value : input.value, event.key === 'ArrowUp', event.shiftKey))
  }
  return {
    text: draft ?? input.show(input.value),
    reading: read?.ok ? read.value : null,
    error: refused,
    change: (text) => {
      setDraft(text)
      setRefused(null)
    },
    leave: commit,
    press: (event) => {
      if (event.key === 'Enter') commit()
      else if (event.key === 'Escape' && draft !== null) {
        // One press takes back what was typed; only the next one lets the selection go.
        event.stopPropagation()
        restore()
      } else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') stepBy(event)
    },
  }
}

/** Why the text a field comes back with was not read. */
function whyUnread<Value>({ kept, read }: TypedInput<Value>): string | null {
  if (kept === undefined || kept.text === null) return null
  const outcome = read(kept.text)
  return outcome.ok ? (kept.says ?? null) : outcome.error
}

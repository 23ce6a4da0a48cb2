import { type KeyboardEvent, type RefObject, useId } from 'react'
import { FieldFrame } from '#ui/fields/FieldFrame.tsx'

interface Props {
  readonly label: string
  readonly name: string
  readonly text: string
  /** How it is read so far, or how it may be written. */
  readonly hint: string | null
  readonly error: string | null
  readonly inputRef?: RefObject<HTMLInputElement | null> | undefined
  readonly onText: (text: string) => void
  readonly onBlur?: (() => void) | undefined
  readonly onKeyDown?: ((event: KeyboardEvent<HTMLInputElement>) => void) | undefined
}

/** A text not yet bound to anything: what is typed stays until the whole entry is carried out. */
export function EntryField(props: Props) {
  const { label, name, text, hint, error, inputRef, onText, onBlur, onKeyDown } = props
  const id = useId()
  return (
    <FieldFrame id={id} name={name} label={label} hint={hint} error={error}>
      <input
        ref={inputRef}
        id={id}
        name={name}
        type="text"
        className="field-input"
        autoComplete="off"
        spellCheck={false}
        value={text}
        aria-invalid={error !== null}
        aria-describedby={hint !== null || error !== null ? `${id}-says` : undefined}
        onChange={(event) => onText(event.target.value)}
        onBlur={onBlur}
        onKeyDown={onKeyDown}
      />
    </FieldFrame>
  )
}

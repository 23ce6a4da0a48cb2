import { useId, useState } from 'react'

interface Props {
  readonly name: string
  readonly label: string
  /** Whose box it is, where several stand together: read aloud, not shown. */
  readonly of?: string | undefined
  readonly isChecked: boolean
  readonly hint?: string | null | undefined
  /** A sentence when the change was refused, null when it was taken. */
  readonly onCheck: (isChecked: boolean) => string | null
}

/** Yes or no, and why a change was refused. */
export function CheckField({ name, label, of, isChecked, hint = null, onCheck }: Props) {
  const id = useId()
  const [refused, setRefused] = useState<string | null>(null)
  const says = refused ?? hint
  return (
    <div className="field">
      <label className="check-field">
        <input
          type="checkbox"
          name={name}
          checked={isChecked}
          aria-describedby={says === null ? undefined : `${id}-says`}
          onChange={(event) => setRefused(onCheck(event.target.checked))}
        />
        <span>
          {label}
          {of !== undefined && <span className="visually-hidden">, {of}</span>}
        </span>
      </label>
      {says !== null && (
        <p
          id={`${id}-says`}
          className={refused === null ? 'field-hint' : 'field-error'}
          role={refused === null ? undefined : 'alert'}
        >
          {refused !== null && <span className="warn-sign" aria-hidden="true" />}
          {says}
        </p>
      )}
    </div>
  )
}

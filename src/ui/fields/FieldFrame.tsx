import type { ReactNode } from 'react'

export interface FieldLabel {
  /** Names the value in the form: stable, for tests and for the browser. */
  readonly name: string
  readonly label: string
  /** The label is read aloud but not shown: the column's head says it already. */
  readonly quiet?: boolean | undefined
  /** Whose field it is, where several stand together with the same label: read aloud, not shown. */
  readonly of?: string | undefined
}

interface Props extends FieldLabel {
  readonly id: string
  /** Under the field: how it was read, or what it is for. */
  readonly hint: string | null
  readonly error: string | null
  readonly children: ReactNode
}

/** A label, a control, and under it how it was read or why it was not. */
export function FieldFrame({ id, label, quiet, of, hint, error, children }: Props) {
  return (
    <div className="field">
      <label htmlFor={id} className={quiet ? 'visually-hidden' : 'field-label'}>
        {label}
        {of !== undefined && <span className="visually-hidden">, {of}</span>}
      </label>
      {children}
      {error !== null ? (
        <p id={`${id}-says`} className="field-error" role="alert">
          <span className="warn-sign" aria-hidden="true" />
          {error}
        </p>
      ) : (
        hint !== null && (
          <p id={`${id}-says`} className="field-hint">
            {hint}
          </p>
        )
      )}
    </div>
  )
}

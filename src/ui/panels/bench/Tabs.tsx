import { useId } from 'react'

interface Props<View extends string> {
  readonly label: string
  readonly views: readonly { readonly id: View; readonly text: string; readonly narrowOnly?: boolean }[]
  readonly current: View
  /** True: too many for a narrow screen, where a list stands in their place. */
  readonly folds?: boolean
  readonly onChoose: (view: View) => void
}

/** One of several views, chosen by a row of words. */
export function Tabs<View extends string>({ label, views, current, folds = false, onChoose }: Props<View>) {
  return (
    <>
      <fieldset className={folds ? 'tabs tabs-fold' : 'tabs'}>
        <legend className="visually-hidden">{label}</legend>
        {views.map(({ id, text, narrowOnly }) => (
          <button
            key={id}
            type="button"
            aria-pressed={id === current}
            className={narrowOnly ? 'tab narrow-only' : 'tab'}
            onClick={() => onChoose(id)}
          >
            {text}
          </button>
        ))}
      </fieldset>
      {folds && <FoldedTabs {...{ label, views, current, onChoose }} />}
    </>
  )
}

function FoldedTabs<View extends string>({ label, views, current, onChoose }: Omit<Props<View>, 'folds'>) {
  const id = useId()
  return (
    <div className="tabs-folded">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <select
        id={id}
        className="field-input"
        value={current}
        onChange={(event) => {
          const chosen = views.find((view) => view.id === event.target.value)
          if (chosen) onChoose(chosen.id)
        }}
      >
        {views.map((view) => (
          <option key={view.id} value={view.id}>
            {view.text}
          </option>
        ))}
      </select>
    </div>
  )
}

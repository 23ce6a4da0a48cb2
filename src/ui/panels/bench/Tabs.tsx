interface Props<View extends string> {
  readonly label: string
  readonly views: readonly { readonly id: View; readonly text: string; readonly narrowOnly?: boolean }[]
  readonly current: View
  readonly onChoose: (view: View) => void
}

/** One of several views, chosen by a row of words. */
export function Tabs<View extends string>({ label, views, current, onChoose }: Props<View>) {
  return (
    <fieldset className="tabs">
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
  )
}

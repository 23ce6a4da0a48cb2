import { useId } from 'react'
import type { RoomView } from '#state/view.ts'

interface View {
  readonly id: RoomView
  readonly text: string
}

/** What is decided of the room, in the order a design goes. */
const DECIDED: readonly View[] = [
  { id: 'surfaces', text: 'Surfaces' },
  { id: 'targets', text: 'Targets' },
  { id: 'paths', text: 'Paths' },
  { id: 'air', text: 'Air and leaks' },
  { id: 'compare', text: 'Compare' },
]

/** What is drawn of the room as it stands: needed while it is surveyed, and seldom after. */
const DRAWN: readonly View[] = [
  { id: 'outline', text: 'Outline' },
  { id: 'heights', text: 'Heights' },
  { id: 'openings', text: 'Openings' },
  { id: 'standing', text: 'Standing and hanging' },
  { id: 'furniture', text: 'Furniture' },
  { id: 'corners', text: 'Corners as built' },
  { id: 'rooms', text: 'Rooms' },
]

interface Props {
  readonly current: RoomView
  readonly onChoose: (view: RoomView) => void
}

/** The views of the whole room in two groups; on a narrow screen one list of both. */
export function RoomTabs({ current, onChoose }: Props) {
  return (
    <>
      <Group legend="View of the bench" views={DECIDED} current={current} onChoose={onChoose} />
      <Group legend="As it stands" isSecond views={DRAWN} current={current} onChoose={onChoose} />
      <Folded current={current} onChoose={onChoose} />
    </>
  )
}

interface GroupProps extends Props {
  readonly legend: string
  readonly views: readonly View[]
  readonly isSecond?: boolean
}

function Group({ legend, views, current, isSecond = false, onChoose }: GroupProps) {
  return (
    <fieldset className={isSecond ? 'tabs tabs-fold tabs-second' : 'tabs tabs-fold'}>
      <legend className="visually-hidden">{legend}</legend>
      {isSecond && (
        <span className="bench-said" aria-hidden="true">
          {legend}
        </span>
      )}
      {views.map(({ id, text }) => (
        <button key={id} type="button" className="tab" aria-pressed={id === current} onClick={() => onChoose(id)}>
          {text}
        </button>
      ))}
    </fieldset>
  )
}

function Folded({ current, onChoose }: Props) {
  const id = useId()
  return (
    <div className="tabs-folded">
      <label htmlFor={id} className="field-label">
        View of the bench
      </label>
      <select
        id={id}
        className="field-input"
        value={current}
        onChange={(event) => {
          const chosen = [...DECIDED, ...DRAWN].find((view) => view.id === event.target.value)
          if (chosen) onChoose(chosen.id)
        }}
      >
        <Options views={DECIDED} />
        <optgroup label="As it stands">
          <Options views={DRAWN} />
        </optgroup>
      </select>
    </div>
  )
}

function Options({ views }: { readonly views: readonly View[] }) {
  return views.map(({ id, text }) => (
    <option key={id} value={id}>
      {text}
    </option>
  ))
}

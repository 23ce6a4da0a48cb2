import { useEffect, useRef } from 'react'
import { benchSurfaces } from '#ui/panels/bench/candidates.ts'
import type { Several } from '#ui/panels/bench/useSeveral.ts'
import { useRoom, useSession, useView } from '#ui/session.ts'

interface Props {
  readonly several: Several
  /** Only what the rows of a table do not offer already. */
  readonly wallsOnly?: boolean
}

/** Picks surfaces without the plan: all walls, any of them one by one, the ceiling, the floor, or nothing. */
export function SelectButtons({ several, wallsOnly = false }: Props) {
  const { view } = useSession()
  const room = useRoom()
  const select = (surfaceIds: readonly string[]) => view.setState({ surfaceIds, cornerId: null, thing: null })
  return (
    <>
      <fieldset className="select-buttons">
        <legend className="visually-hidden">Select</legend>
        <span aria-hidden="true" className="bench-said">
          Select
        </span>
        <button type="button" onClick={() => select(room.walls.map(({ id }) => id))}>
          All walls
        </button>
        <button type="button" className="several-button" aria-expanded={several.isOpen} onClick={several.toggle}>
          Several
        </button>
        {!wallsOnly && !several.isOpen && (
          <>
            <button type="button" onClick={() => select([room.ceiling.id])}>
              Ceiling
            </button>
            <button type="button" onClick={() => select([room.floor.id])}>
              Floor
            </button>
          </>
        )}
        {!wallsOnly && (
          <button type="button" onClick={() => select([])}>
            Whole room
          </button>
        )}
      </fieldset>
      {several.isOpen && <SeveralRow several={several} />}
    </>
  )
}

/** One switch for each surface: pressed in, it is worked on together with the others. */
function SeveralRow({ several }: { readonly several: Several }) {
  const { view } = useSession()
  const surfaces = benchSurfaces(useRoom())
  const selected = useView((state) => state.surfaceIds)
  const row = useRef<HTMLFieldSetElement>(null)
  const { last } = several
  // The bench changes with the first and the last surface: the hand stays where it was.
  useEffect(() => {
    if (last.current !== null) row.current?.querySelector<HTMLElement>(`[data-surface="${last.current}"]`)?.focus()
    last.current = null
  }, [last])
  const turn = (id: string) => {
    const others = selected.filter((other) => other !== id)
    const isIn = others.length < selected.length
    last.current = (isIn ? others.length : selected.length) === 0 ? id : null
    view.setState({ surfaceIds: isIn ? others : [...selected, id], cornerId: null, thing: null })
  }
  return (
    <fieldset className="select-buttons several-row" ref={row}>
      <legend className="visually-hidden">Worked on together</legend>
      <span aria-hidden="true" className="bench-said">
        Worked on together
      </span>
      {surfaces.map(({ facts, label }) => (
        <button
          key={facts.id}
          type="button"
          className="tab"
          data-surface={facts.id}
          aria-pressed={selected.includes(facts.id)}
          onClick={() => turn(facts.id)}
        >
          {label}
        </button>
      ))}
    </fieldset>
  )
}

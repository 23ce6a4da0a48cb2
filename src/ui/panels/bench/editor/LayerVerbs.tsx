import { useEffect, useRef } from 'react'
import { usualLayer } from '#assemblies/usualLayer.ts'
import { type DraftLayer, deleteLayer, insertLayer, moveLayer } from '#state/draft.ts'
import { useBuilding } from '#ui/panels/bench/editor/useBuilding.ts'
import { useShownProject } from '#ui/session.ts'

interface Props {
  readonly entry: DraftLayer
  /** Place in the list, counted from 0. */
  readonly index: number
  readonly isLast: boolean
}

/** What can be done to a layer's place. */
export function LayerVerbs({ entry, index, isLast }: Props) {
  const { change } = useBuilding()
  const { units } = useShownProject()
  const { place, moved } = useFocusAfterMove(index)
  const board = usualLayer('board', units)
  const move = (by: -1 | 1) => {
    moved.current = by
    change((former) => moveLayer(former, entry.key, by))
  }
  return (
    <fieldset className="verbs layer-verbs" ref={place}>
      <legend className="visually-hidden">Layer {index + 1}</legend>
      <button type="button" onClick={() => change((former) => insertLayer(former, index, board))}>
        Insert before
      </button>
      <button type="button" onClick={() => change((former) => insertLayer(former, index + 1, board))}>
        Insert after
      </button>
      <button type="button" data-move={-1} disabled={index === 0} onClick={() => move(-1)}>
        Up
      </button>
      <button type="button" data-move={1} disabled={isLast} onClick={() => move(1)}>
        Down
      </button>
      <button type="button" onClick={() => change((former) => deleteLayer(former, entry.key))}>
        Delete
      </button>
    </fieldset>
  )
}

/** A layer that moved takes the focus along: to the verb that moved it, or at the end of the list to the other one. */
function useFocusAfterMove(index: number) {
  const place = useRef<HTMLFieldSetElement>(null)
  const moved = useRef<-1 | 1 | null>(null)
  const known = useRef(index)
  useEffect(() => {
    if (known.current === index) return
    known.current = index
    if (moved.current === null) return
    const verbs = [...(place.current?.querySelectorAll<HTMLButtonElement>('[data-move]') ?? [])]
    const same = verbs.find((verb) => Number(verb.dataset['move']) === moved.current && !verb.disabled)
    const next = same ?? verbs.find((verb) => !verb.disabled)
    next?.focus()
    moved.current = null
  }, [index])
  return { place, moved }
}

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
  const board = usualLayer('board', units)
  return (
    <fieldset className="verbs layer-verbs">
      <legend className="visually-hidden">Layer {index + 1}</legend>
      <button type="button" onClick={() => change((former) => insertLayer(former, index, board))}>
        Insert before
      </button>
      <button type="button" onClick={() => change((former) => insertLayer(former, index + 1, board))}>
        Insert after
      </button>
      <button type="button" disabled={index === 0} onClick={() => change((former) => moveLayer(former, entry.key, -1))}>
        Up
      </button>
      <button type="button" disabled={isLast} onClick={() => change((former) => moveLayer(former, entry.key, 1))}>
        Down
      </button>
      <button type="button" onClick={() => change((former) => deleteLayer(former, entry.key))}>
        Delete
      </button>
    </fieldset>
  )
}

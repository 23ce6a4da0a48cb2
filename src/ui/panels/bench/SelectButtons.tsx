import { useRoom, useSession } from '#ui/session.ts'

interface Props {
  /** Only what the rows of a table do not offer already. */
  readonly wallsOnly?: boolean
}

/** Picks surfaces without the plan: all walls, the ceiling, the floor, or nothing. */
export function SelectButtons({ wallsOnly = false }: Props) {
  const { view } = useSession()
  const room = useRoom()
  const select = (surfaceIds: readonly string[]) => view.setState({ surfaceIds, cornerId: null })
  return (
    <fieldset className="select-buttons">
      <legend className="visually-hidden">Select</legend>
      <span aria-hidden="true" className="bench-said">
        Select
      </span>
      <button type="button" onClick={() => select(room.walls.map(({ id }) => id))}>
        All walls
      </button>
      {!wallsOnly && (
        <>
          <button type="button" onClick={() => select([room.ceiling.id])}>
            Ceiling
          </button>
          <button type="button" onClick={() => select([room.floor.id])}>
            Floor
          </button>
          <button type="button" onClick={() => select([])}>
            Whole room
          </button>
        </>
      )}
    </fieldset>
  )
}

import type { Obstacle } from '#analysis/room.ts'
import { takeOutObstacle } from '#state/commands/schemes.ts'
import { useRecordedScheme, useRun } from '#ui/panels/bench/useBench.ts'

interface Props {
  readonly obstacle: Obstacle
  /** The column's head says it already. */
  readonly quiet?: boolean
}

/** Whether the scheme on the page takes an obstacle out of the room. */
export function TakenOut({ obstacle, quiet = false }: Props) {
  const scheme = useRecordedScheme()
  const run = useRun()
  const isOut = scheme.takenOut?.includes(obstacle.id) ?? false
  return (
    <label className="check-field">
      <input
        type="checkbox"
        name={`${obstacle.id}-taken-out`}
        checked={isOut}
        onChange={(event) => run(takeOutObstacle(scheme.id, obstacle.id, event.target.checked))}
      />
      <span className={quiet ? 'visually-hidden' : undefined}>
        {quiet ? `${obstacle.name} taken out in ${scheme.name}` : `Taken out in ${scheme.name}`}
      </span>
    </label>
  )
}

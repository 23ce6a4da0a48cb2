import { CeilingPartTable } from '#ui/panels/bench/heights/CeilingPartTable.tsx'
import { DropTable } from '#ui/panels/bench/standing/DropTable.tsx'
import { ObstacleTable } from '#ui/panels/bench/standing/ObstacleTable.tsx'

/** What stands in the room at full height, and what hangs from its ceiling. */
export function StandingView() {
  return (
    <div className="table-place">
      <ObstacleTable />
      <DropTable />
      <CeilingPartTable />
    </div>
  )
}

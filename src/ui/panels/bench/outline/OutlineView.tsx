import { CornerTable } from '#ui/panels/bench/outline/CornerTable.tsx'
import { DiagonalTable } from '#ui/panels/bench/outline/DiagonalTable.tsx'
import { WallTable } from '#ui/panels/bench/outline/WallTable.tsx'

/** The outline as numbers: everything the plan lets a hand do, by keyboard. */
export function OutlineView() {
  return (
    <div className="outline-tables">
      <WallTable />
      <CornerTable />
      <DiagonalTable />
    </div>
  )
}

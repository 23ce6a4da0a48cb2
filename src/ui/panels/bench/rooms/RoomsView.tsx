import { AddRoom } from '#ui/panels/bench/rooms/AddRoom.tsx'
import { CutRoom } from '#ui/panels/bench/rooms/CutRoom.tsx'
import { PartitionTable } from '#ui/panels/bench/rooms/PartitionTable.tsx'
import { RoomTable } from '#ui/panels/bench/rooms/RoomTable.tsx'

/** The rooms of the project, and the partitions between them. */
export function RoomsView() {
  return (
    <div className="table-place">
      <RoomTable />
      <AddRoom />
      <PartitionTable />
      <CutRoom />
    </div>
  )
}

import { CeilingPartTable } from '#ui/panels/bench/heights/CeilingPartTable.tsx'
import { HeightFigures } from '#ui/panels/bench/heights/HeightFigures.tsx'
import { HeightTable } from '#ui/panels/bench/heights/HeightTable.tsx'
import { HowItIsRead } from '#ui/panels/bench/heights/HowItIsRead.tsx'
import { useRoom } from '#ui/session.ts'

/** What was measured of the heights, how it is read, and what is left of them. */
export function HeightsView() {
  const room = useRoom()
  return (
    <div className="outline-tables">
      <div className="heights-measured">
        <HowItIsRead />
        <HeightTable part={null} heights={room.heights} />
        {room.ceilingParts.map((part) => (
          <HeightTable key={part.id} part={part} heights={part.heights} />
        ))}
        <CeilingPartTable />
      </div>
      <HeightFigures />
    </div>
  )
}

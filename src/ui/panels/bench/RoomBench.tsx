import { useState } from 'react'
import { Compare } from '#ui/panels/bench/Compare.tsx'
import { CornersAndWalls } from '#ui/panels/bench/CornersAndWalls.tsx'
import { SelectButtons } from '#ui/panels/bench/SelectButtons.tsx'
import { SurfaceTable } from '#ui/panels/bench/SurfaceTable.tsx'
import { Tabs } from '#ui/panels/bench/Tabs.tsx'
import type { Several } from '#ui/panels/bench/useSeveral.ts'
import { useRoom } from '#ui/session.ts'

type View = 'surfaces' | 'corners' | 'compare'

const VIEWS: readonly { id: View; text: string }[] = [
  { id: 'surfaces', text: 'Surfaces' },
  { id: 'corners', text: 'Corners and walls' },
  { id: 'compare', text: 'Compare' },
]

/** The whole room: its surfaces, its outline in numbers, and its schemes side by side. */
export function RoomBench({ several }: { readonly several: Several }) {
  const room = useRoom()
  const [view, setView] = useState<View>('surfaces')
  return (
    <>
      <header className="bench-head">
        <h2>
          {room.name}: <span className="bench-head-soft">{HEADS[view]}</span>
        </h2>
        <Tabs label="View of the bench" views={VIEWS} current={view} onChoose={setView} />
        <SelectButtons several={several} wallsOnly />
      </header>
      {view === 'surfaces' && <SurfaceTable />}
      {view === 'corners' && <CornersAndWalls />}
      {view === 'compare' && <Compare />}
    </>
  )
}

const HEADS: Readonly<Record<View, string>> = {
  surfaces: 'every surface, what is built against it and what it takes',
  corners: 'the outline and the height in numbers',
  compare: 'the schemes side by side',
}

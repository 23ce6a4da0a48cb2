import type { RoomView } from '#state/view.ts'
import { AirView } from '#ui/panels/bench/air/AirView.tsx'
import { Compare } from '#ui/panels/bench/Compare.tsx'
import { CornersView } from '#ui/panels/bench/corners/CornersView.tsx'
import { FurnitureView } from '#ui/panels/bench/furniture/FurnitureView.tsx'
import { HeightsView } from '#ui/panels/bench/heights/HeightsView.tsx'
import { OpeningsView } from '#ui/panels/bench/openings/OpeningsView.tsx'
import { OutlineView } from '#ui/panels/bench/outline/OutlineView.tsx'
import { PathsView } from '#ui/panels/bench/paths/PathsView.tsx'
import { RoomTabs } from '#ui/panels/bench/RoomTabs.tsx'
import { RoomsView } from '#ui/panels/bench/rooms/RoomsView.tsx'
import { SelectButtons } from '#ui/panels/bench/SelectButtons.tsx'
import { SurfaceTable } from '#ui/panels/bench/SurfaceTable.tsx'
import { StandingView } from '#ui/panels/bench/standing/StandingView.tsx'
import { TargetsView } from '#ui/panels/bench/targets/TargetsView.tsx'
import type { Several } from '#ui/panels/bench/useSeveral.ts'
import { useRoom, useSession, useView } from '#ui/session.ts'
import { unreachable } from '#units/result.ts'

/** Views of who hears what, where no wall is picked to be worked on: their rows lead to it. */
const ANSWERS: ReadonlySet<RoomView> = new Set<RoomView>(['targets', 'paths', 'air', 'compare'])

/** The whole room: its surfaces, everything drawn of it in numbers, and its schemes side by side. */
export function RoomBench({ several }: { readonly several: Several }) {
  const room = useRoom()
  const { view: store } = useSession()
  const view = useView((state) => state.roomView)
  return (
    <>
      <header className="bench-head">
        <h2>{room.name}</h2>
        <RoomTabs current={view} onChoose={(roomView) => store.setState({ roomView })} />
        {!ANSWERS.has(view) && <SelectButtons several={several} wallsOnly />}
      </header>
      <Shown view={view} />
    </>
  )
}

function Shown({ view }: { readonly view: RoomView }) {
  switch (view) {
    case 'surfaces':
      return <SurfaceTable />
    case 'targets':
      return <TargetsView />
    case 'paths':
      return <PathsView />
    case 'air':
      return <AirView />
    case 'outline':
      return <OutlineView />
    case 'heights':
      return <HeightsView />
    case 'openings':
      return <OpeningsView />
    case 'standing':
      return <StandingView />
    case 'furniture':
      return <FurnitureView />
    case 'corners':
      return <CornersView />
    case 'rooms':
      return <RoomsView />
    case 'compare':
      return <Compare />
    default:
      return unreachable(view)
  }
}

import { KeysDrawer } from '#ui/dialogs/KeysDrawer.tsx'
import { MaterialsDrawer } from '#ui/dialogs/MaterialsDrawer.tsx'
import { NewRoomDrawer } from '#ui/dialogs/NewRoomDrawer.tsx'
import { SamplesDrawer } from '#ui/dialogs/SamplesDrawer.tsx'
import { SchemeDrawer } from '#ui/dialogs/SchemeDrawer.tsx'
import { useShellState } from '#ui/shell.ts'
import { unreachable } from '#units/result.ts'

/** What opens downward under the header; the plan moves down and is never covered. */
export function Drawers() {
  const drawer = useShellState((state) => state.drawer)
  switch (drawer) {
    case null:
      return null
    case 'keys':
      return <KeysDrawer />
    case 'materials':
      return <MaterialsDrawer />
    case 'new-room':
      return <NewRoomDrawer />
    case 'samples':
      return <SamplesDrawer />
    case 'scheme':
      return <SchemeDrawer />
    default:
      return unreachable(drawer)
  }
}

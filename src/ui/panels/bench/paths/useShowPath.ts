import type { Path } from '#analysis/paths/answer.ts'
import type { ViewState } from '#state/view.ts'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { useSession } from '#ui/session.ts'
import { unreachable } from '#units/result.ts'

/** Goes to what would have to be changed for a path: its surface or opening is selected, a leak or duct is under its view. */
export function useShowPath(): (path: Pick<Path, 'id' | 'kind' | 'element'>) => void {
  const { view } = useSession()
  return (path) => view.setState(placeOf(path))
}

/** What the page looks at for a path. */
export function placeOf({ id, kind, element }: Pick<Path, 'id' | 'kind' | 'element'>): Partial<ViewState> {
  switch (kind) {
    case 'surface':
    case 'flanking':
      return { ...NOTHING_SELECTED, surfaceIds: [element] }
    case 'opening':
      return openingPlace(element)
    case 'leak':
      return id.startsWith('seal:') ? openingPlace(element) : { ...NOTHING_SELECTED, roomView: 'air' }
    case 'duct':
      return { ...NOTHING_SELECTED, roomView: 'air' }
    default:
      return unreachable(kind)
  }
}

function openingPlace(id: string): Partial<ViewState> {
  return { ...NOTHING_SELECTED, thing: { kind: 'opening', id }, listedThing: null }
}

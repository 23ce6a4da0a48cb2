import type { Layer } from '#assemblies/layer.ts'
import {
  type AssemblyDraft,
  type Building,
  changeDraft,
  isKept,
  keepUnread,
  setLayer,
  startBuilding,
  takeBackStep,
} from '#state/draft.ts'
import type { KeptText } from '#ui/fields/useTyped.ts'
import { type Session, useDocument, useSession, useView } from '#ui/session.ts'
import { invariant } from '#units/result.ts'

/** The assembly in the making and what can be done to it. */
export interface BuildingHand {
  readonly building: Building
  /** Nothing would be lost by leaving it. */
  readonly isKept: boolean
  readonly change: (step: (building: Building) => Building) => void
  readonly patch: (change: Partial<AssemblyDraft>) => void
  readonly setLayer: (key: string, layer: Layer) => void
  readonly takeBack: () => void
  readonly discard: () => void
  /** Where a field keeps a text it could not read. */
  readonly kept: (field: string) => KeptText
}

/** The assembly in the making; only where there is one. */
export function useBuilding(): BuildingHand {
  const { view } = useSession()
  const building = useView((state) => state.building)
  const own = useDocument((state) => state.project.assemblies)
  invariant(building, 'an assembly is being built')
  const change = (step: (former: Building) => Building) =>
    view.setState(({ building: former }) => ({ building: former && step(former) }))
  return {
    building,
    isKept: isKept(building, own),
    change,
    patch: (part) => change((former) => changeDraft(former, { ...former.draft, ...part })),
    setLayer: (key, layer) => change((former) => setLayer(former, key, layer)),
    takeBack: () => change(takeBackStep),
    discard: () => view.setState({ building: null, wantedDraft: null }),
    kept: (field) => ({
      text: building.unread[field] ?? null,
      keep: (text) => change((former) => keepUnread(former, field, text)),
    }),
  }
}

/** True while something is being built that would be lost. */
export function useHasUnsaved(): boolean {
  const building = useView((state) => state.building)
  const own = useDocument((state) => state.project.assemblies)
  return building !== null && !isKept(building, own)
}

/** Opens a draft in the bench; while another would be lost it waits, and the bench asks. */
export function wantDraft({ view, document }: Session, draft: AssemblyDraft): void {
  const { building } = view.getState()
  const isFree = building === null || isKept(building, document.store.getState().project.assemblies)
  view.setState(
    isFree
      ? { building: startBuilding(draft), wantedDraft: null, benchView: 'build' }
      : { wantedDraft: draft, benchView: 'build' },
  )
}

import { useEffect } from 'react'
import { isKept } from '#state/draft.ts'
import { useSession } from '#ui/session.ts'

/** An assembly in the making is no part of the project yet: the browser asks before the page goes with it. */
export function useUnloadGuard(): void {
  const { document, view } = useSession()
  useEffect(() => {
    const guard = (event: BeforeUnloadEvent) => {
      const { building } = view.getState()
      if (building !== null && !isKept(building, document.store.getState().project.assemblies)) event.preventDefault()
    }
    window.addEventListener('beforeunload', guard)
    return () => window.removeEventListener('beforeunload', guard)
  }, [document, view])
}

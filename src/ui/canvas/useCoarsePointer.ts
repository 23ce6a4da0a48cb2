import { useSyncExternalStore } from 'react'

const COARSE = '(pointer: coarse)'

/** Whether a finger points here: no keys are spoken of then. */
export function useCoarsePointer(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const query = window.matchMedia(COARSE)
      query.addEventListener('change', changed)
      return () => query.removeEventListener('change', changed)
    },
    () => window.matchMedia(COARSE).matches,
  )
}

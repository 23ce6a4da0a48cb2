import { useSyncExternalStore } from 'react'

/** At this width the bench shows one of its three views; the style sheet folds at the same. */
const FOLDED = '(max-width: 1024px)'

/** True where the bench shows one view at a time. */
export function useFolded(): boolean {
  return useSyncExternalStore(subscribe, () => window.matchMedia(FOLDED).matches)
}

function subscribe(changed: () => void): () => void {
  const query = window.matchMedia(FOLDED)
  query.addEventListener('change', changed)
  return () => query.removeEventListener('change', changed)
}

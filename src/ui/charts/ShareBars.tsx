import type { PathKind, PathShare } from '#analysis/paths/answer.ts'

interface BarProps {
  readonly kind: PathKind
  /** 0..1 */
  readonly share: number
}

/** One path's share as a bar, its kind by pattern; the number stands beside it. */
export function ShareBar({ kind, share }: BarProps) {
  return (
    <span className="share-track" aria-hidden="true">
      <span className={`share-bar is-${kind}`} style={{ width: `${Math.max(0, Math.min(1, share)) * 100}%` }} />
    </span>
  )
}

/** Which share is looked at: at the band that decides, or of everything. */
export type ShareOf = 'deciding' | 'overall'

export function shareOf(path: PathShare, of: ShareOf): number {
  return of === 'deciding' ? path.shareAtWorstBand : path.share
}

/** Smaller shares stand together in one line, 0..1: under a hundredth nothing is gained by closing one. */
const SMALL_SHARE = 0.01
/** So many bars are always shown one by one. */
const LEAST_SHOWN = 3

export interface SortedShares {
  /** Greatest first. */
  readonly shown: readonly PathShare[]
  /** The rest, too small for a bar each. */
  readonly rest: readonly PathShare[]
}

/** Paths by the share looked at, greatest first, with those apart that are too small for a bar. */
export function sortedShares(paths: readonly PathShare[], of: ShareOf): SortedShares {
  const sorted = [...paths].sort((a, b) => shareOf(b, of) - shareOf(a, of))
  const isShown = (path: PathShare, place: number) => place < LEAST_SHOWN || shareOf(path, of) >= SMALL_SHARE
  const shown = sorted.filter(isShown)
  // One small path alone is shown: a line of its own costs no more than the word for it.
  return sorted.length - shown.length === 1 ? { shown: sorted, rest: [] } : { shown, rest: sorted.slice(shown.length) }
}

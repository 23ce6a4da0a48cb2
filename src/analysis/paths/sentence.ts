import { OCTAVES_HZ } from '#acoustics/bands.ts'
import type { PathShare } from '#analysis/paths/answer.ts'
import { judgedLimit } from '#analysis/paths/limits.ts'
import { beforeVerb, headed, listed, named } from '#analysis/paths/names.ts'
import type { SurfaceResult } from '#analysis/results.ts'
import type { Receiver } from '#analysis/target.ts'

/** Below this share of everything together, surfaces could be built lighter and nobody would hear it. @source own choice: 0.5 dB */
const LIGHTER_BELOW = 0.1

/**
 * The weakest path in one sentence, and whether surfaces are better than they need be beside it.
 * @param shares  greatest at the deciding band first, at least one
 * @param decides  place of the deciding octave in OCTAVES_HZ; null: no source yet, all octaves alike
 */
export function weakestWords(
  receiver: Receiver,
  shares: readonly PathShare[],
  decides: number | null,
  surfaces: readonly SurfaceResult[],
): string {
  const [weakest] = shares
  if (!weakest) return ''
  const { limit } = receiver
  const isOverall = 'levelDb' in limit
  const share = (one: PathShare) => (isOverall ? one.share : one.shareAtWorstBand)
  const hears = `what ${beforeVerb(receiver.name)} hears${whereWords(decides, isOverall ? limit.kind : null)}`
  const carries = `${headed(weakest.path.label)} carries ${percentWords(share(weakest))} of ${hears}`
  const surfaceShare = shares.filter(({ path }) => isOfSurface(path.kind)).reduce((sum, one) => sum + share(one), 0)
  const isNeeded =
    isOfSurface(weakest.path.kind) || surfaceShare >= LIGHTER_BELOW || decidesWhenLighter(receiver, shares)
  const lighter = isNeeded ? '' : lighterWords(shares, surfaces)
  return `${carries}${lighter}.`
}

/** What is left of a margin counts as the same so far. @source own choice */
const SAME_DB = 0.5

/**
 * True where some other octave of a curve would become the tightest if the surfaces let through twice as much: what they
 * do at the deciding octave alone does not say that they are better than they need be.
 */
function decidesWhenLighter(receiver: Receiver, shares: readonly PathShare[]): boolean {
  const judged = judgedLimit(receiver)
  if (judged.kind === 'overall') return false
  const marginAt = (octave: number, surfacesTimes: number): number => {
    const energies = shares.map(({ path, levelsDb }) => {
      const level = levelsDb[octave] ?? null
      return level === null ? 0 : (isOfSurface(path.kind) ? surfacesTimes : 1) * 10 ** (level / 10)
    })
    return judged.limitDb[octave]! - 10 * Math.log10(energies.reduce((sum, energy) => sum + energy, 0))
  }
  const tightest = (surfacesTimes: number) =>
    Math.min(...OCTAVES_HZ.map((_, octave) => marginAt(octave, surfacesTimes)))
  return tightest(2) < tightest(1) - SAME_DB
}

/** What goes round counts with the surfaces: it is told along them. */
function isOfSurface(kind: PathShare['path']['kind']): boolean {
  return kind === 'surface' || kind === 'flanking'
}

function whereWords(decides: number | null, weighted: 'dBA' | 'dBC' | null): string {
  if (decides === null) return ', as for a source that is equally loud in all octaves'
  const hz = OCTAVES_HZ[decides]
  return weighted === null ? ` at ${hz} Hz` : ` in ${weighted}, where ${hz} Hz counts most`
}

function percentWords(share: number): string {
  const percent = Math.round(100 * share)
  return percent === 100 && share < 1 ? 'over 99 %' : `${percent} %`
}

/** "; the walls could all be lighter", of the surfaces that are among the paths. */
function lighterWords(shares: readonly PathShare[], surfaces: readonly SurfaceResult[]): string {
  const among = surfaces.filter(({ id }) => shares.some(({ path }) => path.kind === 'surface' && path.id === id))
  const walls = among.filter(({ kind }) => kind === 'wall').length
  const flat = among.filter(({ kind }) => kind !== 'wall').map(({ label }) => named(label))
  const things = [...(walls === 0 ? [] : [walls === 1 ? 'the wall' : 'the walls']), ...flat]
  if (things.length === 0) return ''
  return `; ${listed(things)} could ${among.length > 1 ? 'all ' : ''}be lighter`
}

import { OCTAVES_HZ } from '#acoustics/bands.ts'
import type { PathShare } from '#analysis/paths/answer.ts'
import type { PathEnergy } from '#analysis/paths/energies.ts'
import { playedEnergies } from '#analysis/paths/levels.ts'
import type { Judged } from '#analysis/paths/limits.ts'
import { gainWithout, type Margin, onlyOctave, type Playing, sharesOf } from '#analysis/paths/margin.ts'

export interface Weighed {
  readonly energies: readonly PathEnergy[]
  /** null: nothing is played yet; shares are as for a source equally loud in all octaves. */
  readonly playing: Playing | null
  readonly judged: Judged
  /** Of the paths that are known. */
  readonly reached: Margin | null
  /** null: it is not known. */
  readonly margin: Margin | null
}

/** Every path with what it carries, greatest at the deciding octave first; of a weighted limit greatest of all first. */
export function pathShares({ energies, playing, judged, reached, margin }: Weighed): readonly PathShare[] {
  const weightDb = judged.kind === 'overall' ? judged.weightDb : null
  const played = playing ? playedEnergies(playing.levelsDb, weightDb) : OCTAVES_HZ.map(() => 1)
  const overall = sharesOf(energies, played)
  const decisive = reached ? sharesOf(energies, onlyOctave(reached.decides)) : overall
  const shares = energies.map((energy, at): PathShare => {
    return {
      path: energy.path,
      share: overall[at]!,
      shareAtWorstBand: decisive[at]!,
      gainIfClosedDb: playing && margin ? gainWithout(energies, energy, playing, judged, margin) : null,
      levelsDb: OCTAVES_HZ.map((_, octave) => {
        const level = playing?.levelsDb[octave] ?? null
        return level === null ? null : level + 10 * Math.log10(energy.middle[octave]!)
      }),
    }
  })
  const rank = (one: PathShare) => (judged.kind === 'overall' ? one.share : one.shareAtWorstBand)
  return shares.toSorted((a, b) => rank(b) - rank(a))
}

import type { PathBasis, PathKind, PathShare, ReceiverAnswer } from '#analysis/paths/answer.ts'
import { STRUCTURE_BORNE } from '#analysis/paths/answerNotes.ts'
import { BEAT_DB } from '#analysis/paths/limits.ts'
import type { Note } from '#analysis/results.ts'
import type { Limit, Receiver } from '#analysis/target.ts'
import { fixed } from '#units/format.ts'
import type { Decibels } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

/** With its sign in whole dB: +5, −3, 0. */
function signedWhole(value: Decibels): string {
  if (value === 0) return '0'
  return value < 0 ? `−${Math.abs(value)}` : `+${value}`
}

/** +5 dB; whole and never rounded up: a margin of −0.2 dB is not met. */
export function marginWords(marginDb: Decibels | null): string {
  return marginDb === null ? 'Not known' : `${signedWhole(Math.floor(marginDb))} dB`
}

/** likely −3 to +13 dB; its ends are rounded outward. */
export function marginRange({ marginLow95Db, marginHigh95Db }: MarginEnds): string | null {
  if (marginLow95Db === null || marginHigh95Db === null) return null
  return `likely ${signedWhole(Math.floor(marginLow95Db))} to ${signedWhole(Math.ceil(marginHigh95Db))} dB`
}

type MarginEnds = Pick<ReceiverAnswer, 'marginLow95Db' | 'marginHigh95Db'>

/** +5 dB, likely −3 to +13 dB: never without its range. */
export function marginInTable(answer: MarginEnds & Pick<ReceiverAnswer, 'marginDb'>): string {
  const range = marginRange(answer)
  return range === null ? marginWords(null) : `${marginWords(answer.marginDb)}, ${range}`
}

/** NC-25; 35 dBA. */
export function limitWords(limit: Limit): string {
  switch (limit.kind) {
    case 'NC':
    case 'NR':
      return `${limit.kind}-${plain(limit.index)}`
    case 'dBA':
    case 'dBC':
      return `${plain(limit.levelDb)} ${limit.kind}`
    default:
      return unreachable(limit)
  }
}

/** NC-25; NC-25 less 5 dB for beat: what is held against, never a limit without what was taken off it. */
export function heldWords({ limit, hasBeat }: Pick<Receiver, 'limit' | 'hasBeat'>): string {
  return `${limitWords(limit)}${hasBeat ? ` less ${BEAT_DB} dB for beat` : ''}`
}

/** 25; 22.5 */
function plain(value: number): string {
  return fixed(value, 1).replace(/\.0$/, '')
}

/** 8 dB; 31.8 dB */
function decibels(value: Decibels): string {
  return `${plain(value)} dB`
}

/** tightest at 125 Hz; of a weighted limit: most of it at 125 Hz. */
export function decidingWords({ worstBandHz, dominantBandHz }: ReceiverAnswer): string | null {
  if (worstBandHz !== null) return `tightest at ${worstBandHz} Hz`
  return dominantBandHz === null ? null : `most of it at ${dominantBandHz} Hz`
}

/** Which share decides: of a curve that at its tightest octave, of a weighted limit that of everything. */
export function decisiveShare({ limit }: Pick<ReceiverAnswer, 'limit'>, path: PathShare): number {
  return 'levelDb' in limit ? path.share : path.shareAtWorstBand
}

/** Where it is counted: " at 125 Hz", " in dBA"; nothing where that is not known. */
export function whereWords({ limit, worstBandHz }: Pick<ReceiverAnswer, 'limit' | 'worstBandHz'>): string {
  if ('levelDb' in limit) return ` in ${limit.kind}`
  return worstBandHz === null ? '' : ` at ${worstBandHz} Hz`
}

/** 71 %; a share that is there is never told as nothing, and one that is not all never as all. */
export function shareWords(share: number): string {
  const percent = share * 100
  if (percent > 0 && percent < 0.1) return 'under 0.1 %'
  if (share < 1 && percent >= 99.5) return 'over 99 %'
  return percent < 9.95 ? `${fixed(percent, 1)} %` : `${Math.round(percent)} %`
}

/** +4.3 dB; what is too little to show says so; null: not known. */
export function gainWords(gainDb: Decibels | null): string {
  if (gainDb === null) return 'not known'
  const size = decibels(Math.abs(gainDb))
  if (size === decibels(0)) return 'under 0.1 dB'
  return `${gainDb < 0 ? '−' : '+'}${size}`
}

/** 52 dB: levels at a receiver are not known to tenths. */
export function levelWords(level: Decibels | null | undefined): string {
  return level == null ? 'not known' : `${fixed(level, 0).replace('-', '−')} dB`
}

/** What a path is, in the trade's words. */
export const PATH_KIND_WORDS: Readonly<Record<PathKind, string>> = {
  surface: 'surface',
  opening: 'opening',
  leak: 'leak',
  duct: 'duct',
  flanking: 'flanking',
}

/** What stands behind a path's loss. */
export const BASIS_WORDS: Readonly<Record<PathBasis, string>> = {
  calculated: 'calculated',
  published: 'published',
  assumed: 'assumed',
  typed: 'typed by you',
}

/** The path that carries most; null where nothing is known. */
export function weakestPath({ paths, marginDb }: Pick<ReceiverAnswer, 'paths' | 'marginDb'>): PathShare | null {
  return marginDb === null ? null : (paths[0] ?? null)
}

/** The sentence on what no airborne figure holds, where there is a margin that it applies to; null: it does not. */
export function notInMargin({ marginDb, notes }: Pick<ReceiverAnswer, 'marginDb' | 'notes'>): string | null {
  if (marginDb === null) return null
  return notes.find(({ text }) => text.startsWith(STRUCTURE_BORNE))?.text ?? null
}

/** True for a note on what goes round. */
export function isOnFlanking({ code }: Note): boolean {
  return code.startsWith('flanking') || code.startsWith('lined-beyond')
}

import type { Statistics } from './statistics.ts'

/** One decimal unless told otherwise, a real minus, and no "-0.0". */
export function figure(value: number, decimals = 1): string {
  const text = Math.abs(value).toFixed(decimals)
  return value < 0 && Number(text) !== 0 ? `−${text}` : text
}

export function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n')
}

export function statisticsCells(s: Statistics): readonly string[] {
  return [String(s.n), figure(s.mean, 2), figure(s.sd, 2), figure(s.worst), `${Math.round(s.percentWithin3)} %`]
}

export const STATISTICS_HEADS = ['n', 'mean', 'SD', 'worst', 'within 3']

/** Said beside a goal. */
export function verdict(isReached: boolean): string {
  return isReached ? 'reached' : 'missed'
}

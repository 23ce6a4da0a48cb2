import type { PredictedRow } from '../anchor/rows.ts'

/** Constants of the engine that were fitted numerically, all on these rows. */
export const FITTED_ROWS: readonly string[] = [
  ...['W1a', 'W1d', 'W2a', 'W3a', 'W6a', 'W7a', 'W9a', 'W13a', 'W13e', 'W15a', 'W15g'],
  ...['S1b', 'S3b', 'S4a', 'S4c', 'S6a'],
].map((row) => `NBC-${row}`)

/** What a row is, for the tables; one row is in one family. */
export function familyName({ row, systems }: PredictedRow): string {
  const { build } = row
  if (row.kind === 'window') return (systems[0]?.leaves.length ?? 1) > 1 ? 'glazing, two panes' : 'glazing, one pane'
  if (build === undefined) return systems[0]?.leaves.length === 1 ? 'masonry, bare' : 'other tables, framed walls'
  if (build.framing.includes('block core')) return systems[0]?.leaves.length === 1 ? 'masonry, bare' : 'masonry, lined'
  if (row.kind === 'floor') {
    if (build.connection.startsWith('1 layer')) return 'joists, board then channel then board'
    return build.connection === 'direct' ? 'joists, boards straight' : 'joists, channel'
  }
  return `${frameName(build.framing)}, ${tieName(build.connection)}`
}

function frameName(framing: string): string {
  if (framing.startsWith('single wood')) return 'wood studs'
  if (framing.startsWith('staggered')) return 'staggered studs'
  if (framing.startsWith('double wood')) return 'two rows of studs'
  return framing.startsWith('non-load') ? 'light steel studs' : 'load-bearing steel studs'
}

function tieName(connection: string): string {
  if (connection.includes('channel')) return 'channel'
  return connection === 'direct' ? 'boards straight' : 'no channel'
}

/** One of the framed walls of the code table: what the goals are stated over. */
export function isFramedWall({ row }: PredictedRow): boolean {
  return row.id.startsWith('NBC-') && row.kind === 'wall' && row.build?.framing.includes('block core') === false
}

/** The least certain class in print: its tables differ by up to 10 for one construction. */
export function isUncertainInPrint(family: string): boolean {
  return family === 'joists, boards straight' || /^(wood|load-bearing steel) studs, boards straight$/.test(family)
}

import { publishedStc } from '#analysis/published.ts'
import type { SchemeResult, SurfaceResult } from '#analysis/results.ts'

type Cell = string | number | null

/** The ledger of every scheme, one line a number, for a spreadsheet: scheme, item, value, unit. */
export function ledgerCsv(results: readonly SchemeResult[]): string {
  const head: Cell[] = ['scheme', 'surface', 'item', 'value', 'unit']
  return toCsv([head, ...results.flatMap(schemeRows)])
}

function schemeRows(result: SchemeResult): readonly Cell[][] {
  const { ledger } = result
  const whole = (item: string, value: number, unit: string): Cell[] => [result.name, '', item, value, unit]
  return [
    whole('floor area existing', ledger.floorAreaM2.existing, 'm2'),
    whole('floor area gained', ledger.floorAreaM2.gained, 'm2'),
    whole('floor area under obstacles', ledger.floorAreaM2.obstacles, 'm2'),
    whole('floor area lost to walls', ledger.floorAreaM2.lostToWalls, 'm2'),
    whole('floor area lost to obstacle linings', ledger.floorAreaM2.lostToObstacleLinings, 'm2'),
    whole('floor area clear', ledger.floorAreaM2.clear, 'm2'),
    whole('floor kept', ledger.keptPercent, '%'),
    whole('height existing', ledger.clearHeightMm.existing, 'mm'),
    whole('height clear, lowest', ledger.clearHeightMm.lowest, 'mm'),
    ...ledger.drops.map((drop) => whole(`height under ${drop.name}`, drop.clearHeightMm, 'mm')),
    whole('volume existing', ledger.volumeM3.existing, 'm3'),
    whole('volume clear', ledger.volumeM3.clear, 'm3'),
    whole('added mass', ledger.addedMassKg, 'kg'),
    ...result.surfaces.flatMap((surface) => surfaceRows(result.name, surface)),
  ]
}

function surfaceRows(scheme: string, surface: SurfaceResult): readonly Cell[][] {
  const published = surface.rating && publishedStc(surface.rating.published)
  const row = (item: string, value: number | string | null, unit: string): Cell[] => [
    scheme,
    surface.label,
    item,
    value,
    unit,
  ]
  return [
    row('assembly', surface.assembly, ''),
    row('depth from finished face', surface.depthFromFaceMm, 'mm'),
    row('depth from structure', surface.depthFromStructureMm, 'mm'),
    row('floor area lost', surface.areaLostM2, 'm2'),
    row('STC', surface.rating?.stc ?? null, 'dB'),
    row('STC likely range, half width', surface.rating?.plusMinus95 ?? null, 'dB'),
    row('Rw', surface.rating?.rw ?? null, 'dB'),
    row('C', surface.rating?.c ?? null, 'dB'),
    row('Ctr', surface.rating?.ctr ?? null, 'dB'),
    row('OITC', surface.rating?.evidence.oitc.value ?? null, 'dB'),
    row('STC calculated, before the shift towards print', surface.rating?.physicsStc ?? null, 'dB'),
    row('STC published', published?.stc ?? null, 'dB'),
    row('STC published, source', published?.source ?? null, ''),
  ]
}

function toCsv(rows: readonly (readonly Cell[])[]): string {
  return `${rows.map((row) => row.map(cellText).join(',')).join('\r\n')}\r\n`
}

/** Quotes where needed; a leading = + - @ in text is quoted away so that no spreadsheet runs it. */
function cellText(cell: Cell): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return String(cell)
  const safe = /^[=+\-@\t]/.test(cell) ? `'${cell}` : cell
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

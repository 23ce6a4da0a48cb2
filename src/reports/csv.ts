import { publishedStc } from '#analysis/published.ts'
import type { SchemeResult, SurfaceResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import { type Cell, toCsv } from '#reports/cells.ts'
import { receiverRows } from '#reports/pathsCsv.ts'
import { heardIn, nameIn, type RoomResults, wallLabels } from '#reports/roomResults.ts'

/**
 * The ledger of every scheme, one line a number, for a spreadsheet: scheme, item, value, unit; with the room before them
 * where there are several. `surface` also names openings, boxes, furniture,
 * corners and receivers.
 */
export function ledgerCsv(rooms: readonly RoomResults[]): string {
  const head: Cell[] = ['scheme', 'surface', 'item', 'value', 'unit']
  const rowsOf = (one: RoomResults) =>
    one.results.flatMap((result, i) => [
      ...schemeRows(result, one.room),
      ...(heardIn(one, i)?.receivers ?? []).flatMap((heard) => receiverRows(result.name, heard)),
    ])
  if (rooms.length === 1) return toCsv([head, ...rooms.flatMap(rowsOf)])
  const named = rooms.flatMap((one) => rowsOf(one).map((row): Cell[] => [one.room.name, ...row]))
  return toCsv([['room', ...head], ...named])
}

function schemeRows(result: SchemeResult, room: Room): readonly Cell[][] {
  const { ledger } = result
  const whole = (item: string, value: number, unit: string): Cell[] => [result.name, '', item, value, unit]
  return [
    whole('floor area existing', ledger.floorAreaM2.existing, 'm2'),
    whole('floor area gained', ledger.floorAreaM2.gained, 'm2'),
    whole('floor area under obstacles', ledger.floorAreaM2.obstacles, 'm2'),
    whole('floor area lost to walls', ledger.floorAreaM2.lostToWalls, 'm2'),
    whole('floor area lost to obstacle linings', ledger.floorAreaM2.lostToObstacleLinings, 'm2'),
    ...(ledger.floorAreaM2.lostToBoxes > 0
      ? [whole('floor area lost to silencer boxes', ledger.floorAreaM2.lostToBoxes, 'm2')]
      : []),
    whole('floor area clear', ledger.floorAreaM2.clear, 'm2'),
    whole('floor kept', ledger.keptPercent, '%'),
    whole('height existing', ledger.clearHeightMm.existing, 'mm'),
    whole('height clear, lowest', ledger.clearHeightMm.lowest, 'mm'),
    whole('height clear, mean', ledger.clearHeightMm.mean, 'mm'),
    ...ledger.drops.map((drop) => whole(`height under ${drop.name}`, drop.clearHeightMm, 'mm')),
    ...ledger.areaAbove.map(({ heightMm, areaM2 }) => whole(`floor area with ${heightMm} mm over it`, areaM2, 'm2')),
    whole('volume existing', ledger.volumeM3.existing, 'm3'),
    whole('volume clear', ledger.volumeM3.clear, 'm3'),
    whole('added mass', ledger.addedMassKg, 'kg'),
    ...result.surfaces.flatMap((surface) => surfaceRows(result.name, surface)),
    ...thingRows(result, room),
  ]
}

/** Openings, boxes, furniture and corners; what is wrong with them in words. */
function thingRows(result: SchemeResult, room: Room): readonly Cell[][] {
  const row = (thing: string, item: string, value: Cell, unit: string): Cell[] => [
    result.name,
    thing,
    item,
    value,
    unit,
  ]
  return [
    ...result.openings.flatMap((check) => {
      const name = nameIn(room.openings, check.id)
      return [
        row(name, 'clear width', check.clearWidthMm, 'mm'),
        row(name, 'head over the new floor', check.clearHeightMm, 'mm'),
        row(name, 'reveal depth', check.revealDepthMm, 'mm'),
        row(name, 'step at the threshold', check.thresholdStepMm, 'mm'),
        ...(check.door?.leaves ?? []).map((leaf) => row(name, `opens, ${leaf.hangs}`, leaf.opensDeg, 'deg')),
        ...check.problems.map(({ text }) => row(name, 'problem', text, '')),
      ]
    }),
    ...result.boxes.flatMap((check) => {
      const problems = check.problems.map(({ text }) => row(check.name, 'problem', text, ''))
      return [row(check.name, 'fits', problems.length === 0 ? 'yes' : 'no', ''), ...problems]
    }),
    ...result.furniture.flatMap((check) => {
      const name = nameIn(room.furniture, check.id)
      const problems = check.problems.map(({ text }) => row(name, 'problem', text, ''))
      return [row(name, 'fits', problems.length === 0 ? 'yes' : 'no', ''), ...problems]
    }),
    ...result.corners.map((corner) => row(wallLabels(room, corner.walls), 'corner as built', corner.text, '')),
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

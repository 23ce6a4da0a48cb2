import type { Ledger } from '#analysis/results.ts'
import type { Mark } from '#drawing/model.ts'
import { rule, type Table } from '#drawing/sheet/schedule.ts'
import { LINE_HEIGHT, minusSign, textMark } from '#drawing/text.ts'
import { formatArea, formatLength, formatMass, formatPercent, formatSurfaceMass, formatVolume } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface Line {
  readonly label: string
  readonly before: string
  readonly after: string
  readonly main: boolean
}

/** The ledger: floor, height and volume before and after, then what takes it. */
export function ledgerTable(ledger: Ledger, units: LengthUnit, width: number, size: number): Table {
  const lines = [...mainLines(ledger, units), ...detailLines(ledger, units)]
  const line = size * LINE_HEIGHT
  const heights = lines.map(({ main }) => line + size * (main ? 0.75 : 0.2))
  const height = line + size * 1.1 + heights.reduce((sum, row) => sum + row, 0)
  const middle = width * 0.66
  return {
    height,
    marks: (x, y) => {
      const common = { size, role: 'ledger' } as const
      const marks: Mark[] = [
        textMark('Space', x, y + size, { ...common, weight: 600 }),
        textMark('before', x + middle, y + size, { ...common, colour: 'soft', anchor: 'end' }),
        textMark('after', x + width, y + size, { ...common, colour: 'soft', anchor: 'end' }),
        rule(x, y + line + size * 0.2, width, size, 'ink'),
      ]
      let top = y + line + size * 0.7
      lines.forEach(({ label, before, after, main }, index) => {
        const baseline = top + size * 0.85
        marks.push(
          textMark(label, x, baseline, { ...common, colour: main ? 'ink' : 'soft' }),
          textMark(before, x + middle, baseline, { ...common, colour: 'soft', anchor: 'end' }),
          textMark(after, x + width, baseline, { ...common, weight: main ? 600 : 400, anchor: 'end' }),
        )
        top += heights[index]!
        if (main) marks.push(rule(x, top - size * 0.45, width, size, 'line'))
      })
      return marks.filter((mark) => mark.kind !== 'text' || mark.text !== '')
    },
  }
}

function mainLines({ floorAreaM2, keptPercent, clearHeightMm, volumeM3 }: Ledger, units: LengthUnit): Line[] {
  const row = (label: string, before: string, after: string): Line => ({ label, before, after, main: true })
  const volumeKept = volumeM3.existing > 0 ? (100 * volumeM3.clear) / volumeM3.existing : 0
  return [
    row('Floor', formatArea(floorAreaM2.existing, units), formatArea(floorAreaM2.clear, units)),
    row('Floor kept', '', formatPercent(keptPercent)),
    row('Lowest clear height', formatLength(clearHeightMm.existing, units), formatLength(clearHeightMm.lowest, units)),
    row('Volume', formatVolume(volumeM3.existing, units), formatVolume(volumeM3.clear, units)),
    row('Volume kept', '', formatPercent(volumeKept)),
  ]
}

function detailLines(ledger: Ledger, units: LengthUnit): Line[] {
  const { floorAreaM2, clearSizeMm, clearHeightMm, drops } = ledger
  const row = (label: string, after: string): Line => ({ label, before: '', after, main: false })
  const area = (label: string, value: number): Line[] =>
    Math.abs(value) < 5e-4 ? [] : [row(label, formatArea(value, units))]
  const height = (label: string, value: number): Line[] =>
    value === 0 ? [] : [row(label, minusSign(formatLength(value, units)))]
  const size = `${formatLength(clearSizeMm.width, units)} × ${formatLength(clearSizeMm.length, units)}`
  return [
    row(ledger.parts > 1 ? 'Clear size of the largest part' : 'Clear size', size),
    ...area('Taken by wall strips', floorAreaM2.lostToWalls),
    ...area('Taken by columns and piers', floorAreaM2.obstacles),
    ...area('Taken by their linings', floorAreaM2.lostToObstacleLinings),
    ...area('Gained by removing linings', floorAreaM2.gained),
    ...height('Taken by the ceiling', clearHeightMm.ceilingTakes),
    ...height('Taken by the floor', clearHeightMm.floorTakes),
    ...drops.map((drop) => row(`Under ${drop.name}`, formatLength(drop.clearHeightMm, units))),
    row('Added weight', formatMass(ledger.addedMassKg, units)),
    ...(ledger.onJoistsKgM2 > 0 ? [row('of it on the joists', formatSurfaceMass(ledger.onJoistsKgM2, units))] : []),
  ]
}

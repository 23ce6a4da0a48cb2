import type { Ledger, SchemeResult } from '#analysis/results.ts'
import type { Mark } from '#drawing/model.ts'
import { rule, type Table } from '#drawing/sheet/schedule.ts'
import { LINE_HEIGHT, minusSign, textMark, textWidth, wrapText } from '#drawing/text.ts'
import { formatArea, formatLength, formatMass, formatPercent, formatSurfaceMass, formatVolume } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface Line {
  readonly label: string
  readonly before: string
  readonly after: string
  readonly main: boolean
}

/** The ledger: floor, height and volume before and after, then what takes it. */
export function ledgerTable(
  { ledger, clear }: Pick<SchemeResult, 'ledger' | 'clear'>,
  units: LengthUnit,
  width: number,
  size: number,
): Table {
  const nothingLeft = clear.length === 0
  const middle = width * 0.66
  const lines = [
    ...(nothingLeft ? nothingLines(ledger, units) : mainLines(ledger, units)),
    ...detailLines(ledger, units, nothingLeft),
  ].map((words) => ({ ...words, labels: wrapText(words.label, labelWidth(words, middle, width, size), size, 400) }))
  const line = size * LINE_HEIGHT
  const heights = lines.map(({ main, labels }) => line * labels.length + size * (main ? 0.75 : 0.2))
  const height = line + size * 1.1 + heights.reduce((sum, row) => sum + row, 0)
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
      lines.forEach(({ labels, before, after, main }, index) => {
        const baseline = top + size * 0.85
        marks.push(
          ...labels.map((label, row) =>
            textMark(label, x, baseline + row * line, { ...common, colour: main ? 'ink' : 'soft' }),
          ),
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

/** What a label may cover before it meets the figures of its line. */
function labelWidth({ before, after, main }: Line, middle: number, width: number, size: number): number {
  if (before !== '') return middle - textWidth(before, size, 400) - size
  return width - textWidth(after, size, main ? 600 : 400) - size
}

function mainRow(label: string, before: string, after: string): Line {
  return { label, before, after, main: true }
}

/** Where the linings meet there is no height and no volume to speak of. */
function nothingLines({ floorAreaM2 }: Ledger, units: LengthUnit): Line[] {
  return [
    mainRow('Floor', formatArea(floorAreaM2.existing, units), ''),
    mainRow('Floor left', '', 'none: the linings meet'),
  ]
}

function mainLines(ledger: Ledger, units: LengthUnit): Line[] {
  const { floorAreaM2, keptPercent, clearHeightMm, volumeM3, drops } = ledger
  const volumeKept = volumeM3.existing > 0 ? (100 * volumeM3.clear) / volumeM3.existing : 0
  return [
    mainRow('Floor', formatArea(floorAreaM2.existing, units), formatArea(floorAreaM2.clear, units)),
    mainRow('Floor kept', '', formatPercent(keptPercent)),
    mainRow(
      drops.length > 0 ? 'Clear height, away from drops' : 'Lowest clear height',
      formatLength(clearHeightMm.existing, units),
      formatLength(clearHeightMm.lowest, units),
    ),
    ...drops.map((drop) => mainRow(`Under ${drop.name}`, '', formatLength(drop.clearHeightMm, units))),
    mainRow('Volume', formatVolume(volumeM3.existing, units), formatVolume(volumeM3.clear, units)),
    mainRow('Volume kept', '', formatPercent(volumeKept)),
  ]
}

function detailLines(ledger: Ledger, units: LengthUnit, nothingLeft: boolean): Line[] {
  const { floorAreaM2, clearSizeMm, clearHeightMm } = ledger
  const row = (label: string, after: string): Line => ({ label, before: '', after, main: false })
  const area = (label: string, value: number): Line[] =>
    Math.abs(value) < 5e-4 ? [] : [row(label, formatArea(value, units))]
  const height = (label: string, value: number): Line[] =>
    value === 0 ? [] : [row(label, minusSign(formatLength(value, units)))]
  const size = `${formatLength(clearSizeMm.width, units)} × ${formatLength(clearSizeMm.length, units)}`
  return [
    ...(nothingLeft ? [] : [row(ledger.parts > 1 ? 'Clear size of the largest part' : 'Clear size', size)]),
    ...area('Taken by wall strips', floorAreaM2.lostToWalls),
    ...area('Taken by columns and piers', floorAreaM2.obstacles),
    ...area('Taken by their linings', floorAreaM2.lostToObstacleLinings),
    ...area('Taken by silencer boxes', floorAreaM2.lostToBoxes),
    ...area('Gained by removing linings', floorAreaM2.gained),
    ...height('Taken by the ceiling', clearHeightMm.ceilingTakes),
    ...height('Taken by the floor', clearHeightMm.floorTakes),
    row('Added weight', formatMass(ledger.addedMassKg, units)),
    ...(ledger.onJoistsKgM2 > 0 ? [row('of it on the joists', formatSurfaceMass(ledger.onJoistsKgM2, units))] : []),
  ]
}

import { describe, expect, it } from 'vitest'
import { predictLoss } from '#acoustics/layered/predict.ts'
import { rate, STC_IN_TENTHS } from '#acoustics/rating.ts'
import { mean, standardDeviation, tabledSystem } from '../../support/acoustics.ts'
import table from './nbcFramedWalls.json' with { type: 'json' }

type Row = (typeof table.rows)[number]

/** Predicted minus published STC; of two spacings with one published value the lower prediction. */
function residual(row: Row): number {
  const channels = row.channelSpacingMm.length > 0 ? row.channelSpacingMm : [0]
  const predictions = row.studSpacingMm.flatMap((studs) =>
    channels.map((channel) => {
      const { lossDb } = predictLoss(tabledSystem(row, studs, channel), { quality: 'drag' })
      return rate(lossDb, STC_IN_TENTHS).value
    }),
  )
  return Math.min(...predictions) - row.stc
}

const residuals = new Map(table.rows.map((row) => [row.row, residual(row)]))
const of = (accept: (row: Row) => boolean) => table.rows.filter(accept).map((row) => residuals.get(row.row)!)

/**
 * The table is not blind (see its `what`), so the limits say that nothing broke, not how good the method is on walls it
 * never saw. Reached: mean +0.5, SD 2.4.
 */
describe(table.source, () => {
  it('all 94 framed walls: mean within 1.5 and SD at most 3 STC', () => {
    const all = of(() => true)
    expect(all).toHaveLength(94)
    expect(Math.abs(mean(all))).toBeLessThanOrEqual(1.5)
    expect(standardDeviation(all)).toBeLessThanOrEqual(3)
  })

  it('rows that no constant was fitted on: the same limits', () => {
    const others = of((row) => !table.fitted.includes(row.row))
    expect(others.length).toBeGreaterThanOrEqual(78)
    expect(Math.abs(mean(others))).toBeLessThanOrEqual(1.5)
    expect(standardDeviation(others)).toBeLessThanOrEqual(3)
  })

  it('no family of at least four rows is off by more than 4 STC on average', () => {
    const families = new Map<string, number[]>()
    for (const row of table.rows) {
      const name = `${row.framing}, ${row.connection}, ${row.absorberMm > 0 ? 'filled' : 'empty'}`
      families.set(name, [...(families.get(name) ?? []), residuals.get(row.row)!])
    }
    const off = [...families].filter(([, values]) => values.length >= 4 && Math.abs(mean(values)) > 4)
    expect(off.map(([name]) => name)).toEqual([])
  })
})

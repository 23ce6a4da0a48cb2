import { describe, expect, it } from 'vitest'
import table from '#acoustics/data/materials.json'
import { materialTable } from '#acoustics/materials.ts'
import { criticalTimesThickness, materialLines } from '#ui/panels/bench/inspect/materialRows.ts'

describe('the table of materials', () => {
  it('has a line for every material, and one more where thin boards differ', () => {
    const thin = Object.values(table.materials).filter((entry) => 'thinner' in entry)
    expect(materialTable()).toHaveLength(Object.keys(table.materials).length + thin.length)
    expect(materialTable().filter(({ belowMm }) => belowMm !== null)).toHaveLength(thin.length)
  })

  it.each(materialTable())('gives $id the critical frequency of its own numbers', (row) => {
    const { densityKgM3, youngPa, poisson } = row.material
    // thin plate: fc h = c2 / (2 pi) sqrt(12 rho (1 - nu2) / E); c of dry air at 20 C is within 0.5 m/s of 343
    const expected = (343 ** 2 / (2 * Math.PI)) * Math.sqrt((12 * densityKgM3 * (1 - poisson ** 2)) / youngPa)
    expect(criticalTimesThickness(row) / expected).toBeCloseTo(1, 2)
  })

  it('shows every number with its source and status', () => {
    for (const line of materialLines('mm')) {
      expect(line.source).not.toBe('')
      expect(['seen', 'memory', 'derived']).toContain(line.status)
    }
    expect(materialLines('mm')[1]?.name).toBe('Gypsum board, type X, below 14.3 mm')
  })
})

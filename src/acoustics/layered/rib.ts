import links from '#acoustics/data/links.json' with { type: 'json' }
import type { StudRow } from '#acoustics/layered/system.ts'

/** A row of studs screwed to one leaf only, SI units. */
export interface RibModel {
  /** kg per metre of stud */
  readonly massPerLength: number
  /** E I about the axis the wall bends it, N m2 */
  readonly bending: number
  /** m */
  readonly spacing: number
}

/** Thin-walled C section: sheet area per length in m2 and second moment of area in m4; all lengths in mm. */
function steelSection(
  depthMm: number,
  sheetMm: number,
  flangeMm: number,
  lipMm: number,
): { area: number; second: number } {
  const half = depthMm / 2
  const area = sheetMm * (depthMm + 2 * flangeMm + 2 * lipMm)
  const second = sheetMm * (depthMm ** 3 / 12 + 2 * (flangeMm + lipMm) * half ** 2)
  return { area: area * 1e-6, second: second * 1e-12 }
}

/**
 * Mass and bending stiffness of a row of studs. Wood: solid 38 mm section; steel: thin C section.
 * @source section formulas, any handbook; densities and moduli in data/links.json, memory
 */
export function modelRib(row: StudRow): RibModel {
  const spacing = row.spacingMm / 1000
  if (row.material === 'wood') {
    const { massKgM3, widthMm, youngPa } = links.studs.wood
    const [width, depth] = [widthMm / 1000, row.depthMm / 1000]
    return { massPerLength: massKgM3 * width * depth, bending: (youngPa * width * depth ** 3) / 12, spacing }
  }
  const { sheetMm, flangeMm, lipMm } = links.studs[row.material]
  const { densityKgM3, youngPa } = links.studs.steel
  const section = steelSection(row.depthMm, sheetMm, flangeMm, lipMm)
  return { massPerLength: densityKgM3 * section.area, bending: youngPa * section.second, spacing }
}

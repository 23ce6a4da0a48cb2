import { criticalFrequency } from '#acoustics/layered/resonance.ts'
import { type MaterialRow, materialTable } from '#acoustics/materials.ts'
import { capital } from '#ui/panels/words.ts'
import { fixed, formatThickness } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** One material as it is read. */
export interface MaterialLine {
  readonly key: string
  readonly name: string
  readonly density: string
  readonly young: string
  readonly poisson: string
  readonly loss: string
  /** Critical frequency times thickness, m/s: divided by a thickness in metres it gives the dip in hertz. */
  readonly criticalTimesThickness: string
  readonly source: string
  readonly status: string
}

/** Any thickness does: critical frequency times thickness is the same for all. */
const TRIED_MM = 10

/** The table of materials, every number with its unit in the head of its column. */
export function materialLines(unit: LengthUnit): readonly MaterialLine[] {
  return materialTable().map((row) => {
    const { id, material, belowMm } = row
    const thin = belowMm === null ? '' : `, below ${formatThickness(belowMm, unit)}`
    return {
      key: `${id} ${belowMm}`,
      name: `${capital(material.name)}${thin}`,
      density: fixed(material.densityKgM3, 0),
      young: youngWords(material.youngPa),
      poisson: fixed(material.poisson, 2),
      loss: `${material.internalLoss}`,
      criticalTimesThickness: fixed(criticalTimesThickness(row), 1),
      source: material.source,
      status: material.status,
    }
  })
}

/** @returns m/s */
export function criticalTimesThickness({ id, belowMm }: Pick<MaterialRow, 'id' | 'belowMm'>): number {
  const thicknessMm = belowMm === null ? Math.max(TRIED_MM, THICK_MM) : Math.min(TRIED_MM, belowMm / 2)
  return (criticalFrequency({ material: id, thicknessMm }) * thicknessMm) / 1000
}

/** Thick enough that no sheet counts as thin. */
const THICK_MM = 1000

/** Young's modulus in GPa to three figures. */
function youngWords(youngPa: number): string {
  return `${Number((youngPa / 1e9).toPrecision(3))}`
}

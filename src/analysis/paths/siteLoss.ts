import { compositeLoss } from '#acoustics/composite.ts'
import { transmittedFraction } from '#acoustics/curve.ts'
import { rate, STC } from '#acoustics/rating.ts'
import type { Path, SiteLoss } from '#analysis/paths/answer.ts'

/**
 * STC of everything between the room and a receiver: of surfaces and openings alone, as a laboratory would rate them,
 * and with leaks, ducts and flanking over the same area. null: no surface and no opening.
 */
export function siteLossOf(paths: readonly Path[]): SiteLoss | null {
  const elements = paths.filter(({ kind }) => kind === 'surface' || kind === 'opening')
  const areaM2 = elements.reduce((sum, path) => sum + path.areaM2, 0)
  if (!(areaM2 > 0)) return null
  const laboratory = compositeLoss(elements)
  const others = paths.filter((path) => !elements.includes(path))
  const expected = laboratory.map((loss, band) => {
    const beside = others.reduce((sum, path) => sum + path.areaM2 * transmittedFraction(path.lossDb[band]!), 0)
    return -10 * Math.log10(transmittedFraction(loss) + beside / areaM2)
  })
  return { laboratoryStc: rate(laboratory, STC).value, expectedStc: rate(expected, STC).value }
}

import type { BandCurve } from '#acoustics/bands.ts'
import { compositeLoss } from '#acoustics/composite.ts'
import { flatCurve, transmittedFraction } from '#acoustics/curve.ts'
import { slitLoss } from '#acoustics/leak.ts'
import table from '#assemblies/data/openings.json' with { type: 'json' }
import type { OpeningKind, SealCondition, SealsOf } from '#assemblies/opening.ts'
import type { OpeningCurve } from '#assemblies/openingCurves.ts'
import type { Millimetres, SquareMetres } from '#units/quantity.ts'

/** What an open gap round a leaf lets through, as a part of its own. */
export interface SealLeak {
  readonly areaM2: SquareMetres
  /** dB over BANDS_HZ for that area, >= 0. */
  readonly lossDb: BandCurve
  readonly sdDb: BandCurve
}

/** The leaf the seals go round. */
export interface Sealed {
  readonly seals: SealsOf
  readonly thicknessMm: Millimetres
  readonly areaM2: SquareMetres
  /** All the way round, and down the middle where two leaves meet. */
  readonly perimeterMm: Millimetres
  readonly widthMm: Millimetres
  readonly kind: OpeningKind
}

/** Gap of worn seals all round. @source data/openings.json */
export function wornGap(kind: OpeningKind): Millimetres {
  return kind === 'window' ? table.seals.windowGapMm : table.seals.wornGapMm
}

/** Whether a gap over the floor is possible at all: doors end there, windows and vents do not. */
export function canBeUndercut(kind: OpeningKind): boolean {
  return kind === 'door' || kind === 'vehicle-door'
}

interface Gap {
  readonly lengthMm: Millimetres
  readonly widthMm: Millimetres
  readonly place: 'middle' | 'edge'
}

/** The gaps a seal condition leaves open; none where the printed figure has them in it, or where nothing opens. */
function gapsOf({ seals, perimeterMm, widthMm, kind }: Sealed, condition: SealCondition): readonly Gap[] {
  if (seals === 'none' || condition === 'good') return []
  const isUndercut = condition === 'undercut'
  const roundMm = perimeterMm - (isUndercut ? widthMm : 0)
  const round: Gap = { lengthMm: roundMm, widthMm: wornGap(kind), place: 'middle' }
  const under: Gap = { lengthMm: widthMm, widthMm: table.seals.undercutGapMm, place: 'edge' }
  return [...(seals === 'tested' ? [round] : []), ...(isUndercut ? [under] : [])]
}

/** What the seals let through in this condition; null: nothing beyond what was tested. */
export function sealLeak(leaf: Sealed, condition: SealCondition): SealLeak | null {
  const gaps = gapsOf(leaf, condition).filter(({ lengthMm }) => lengthMm > 0)
  if (gaps.length === 0) return null
  const parts = gaps.map(({ lengthMm, widthMm, place }) => ({
    areaM2: (lengthMm * widthMm) / 1e6,
    lossDb: slitLoss({ widthMm, depthMm: leaf.thicknessMm, place }),
  }))
  const openM2 = parts.reduce((sum, { areaM2 }) => sum + areaM2, 0)
  // A gap is never more than the opening it is in.
  const areaM2 = Math.min(openM2, leaf.areaM2)
  return { areaM2, lossDb: compositeLoss(parts), sdDb: flatCurve(table.seals.sdDb) }
}

/** The leaf and the gap round it as one, dB over BANDS_HZ, for the leaf's area. */
export function lossWithLeak(lossDb: BandCurve, leak: SealLeak, areaM2: SquareMetres): BandCurve {
  const leaf = leak.areaM2 < areaM2 ? [{ areaM2: areaM2 - leak.areaM2, lossDb }] : []
  return compositeLoss([...leaf, leak])
}

/** The same with its spread: each one's, by what it lets through. */
export function withLeak(curve: OpeningCurve, leak: SealLeak | null, areaM2: SquareMetres): OpeningCurve {
  if (!leak) return curve
  const share = curve.lossDb.map((loss, band) => {
    const gap = leak.areaM2 * transmittedFraction(leak.lossDb[band]!)
    return gap / (gap + (areaM2 - leak.areaM2) * transmittedFraction(loss))
  })
  return {
    ...curve,
    lossDb: lossWithLeak(curve.lossDb, leak, areaM2),
    sdDb: curve.sdDb.map((sd, band) => sd * (1 - share[band]!) + leak.sdDb[band]! * share[band]!),
  }
}

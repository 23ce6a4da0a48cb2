import type { Ledger, SchemeResult } from '#analysis/results.ts'
import { bothAreas, otherUnit } from '#ui/panels/words.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

/** Where the height goes and what is left of it everywhere; "none" where the linings leave no floor. */
export function heightRows(
  { ledger }: Pick<SchemeResult, 'ledger'>,
  unit: LengthUnit,
): readonly (readonly [string, string])[] {
  const { clearHeightMm: height, drops, areaAbove, parts, floorAreaM2 } = ledger
  const left = (text: string) => (parts > 0 ? text : 'none')
  return [
    ['Lowest height as it stands', bothHeights(height.existing, unit)],
    ...(parts > 0 && riseInside(height) > 0
      ? ([
          [
            'Rise of the slope from there to the lowest place inside the linings',
            bothHeights(riseInside(height), unit),
          ],
        ] as const)
      : []),
    ['Ceiling build-up, at the lowest place', bothHeights(height.ceilingTakes, unit)],
    ['Floor build-up, at the lowest place', bothHeights(height.floorTakes, unit)],
    [drops.length > 0 ? 'Lowest, away from drops' : 'Lowest', left(bothHeights(height.lowest, unit))],
    ...drops.map((drop) => [`Under ${drop.name}`, left(bothHeights(drop.clearHeightMm, unit))] as const),
    [drops.length > 0 ? 'Mean, drops included' : 'Mean', left(bothHeights(height.mean, unit))],
    ...areaAbove.map(
      ({ heightMm, areaM2 }) =>
        [
          `Floor with ${bothHeights(heightMm, unit)} or more`,
          left(isAll(areaM2, floorAreaM2.clear) ? 'all of it' : bothAreas(areaM2, unit)),
        ] as const,
    ),
  ]
}

/** Less is lost in rounding to whole millimetres, mm. */
const SEEN_MM = 0.5

/**
 * How much higher the old room is where the clear one is lowest: on a slope the lowest place lies at an old wall, behind
 * its lining. Without it the heights do not add up for a reader. 0 where it is not seen.
 */
export function riseInside(height: Ledger['clearHeightMm']): Millimetres {
  const rise = height.lowest + height.ceilingTakes + height.floorTakes - height.existing
  return rise >= SEEN_MM ? rise : 0
}

/** Areas this near are the same, m2: a square of a centimetre. */
const SAME_M2 = 1e-4

function isAll(areaM2: number, clearM2: number): boolean {
  return Math.abs(areaM2 - clearM2) < SAME_M2
}

export function bothHeights(height: Millimetres, unit: LengthUnit): string {
  return `${formatLength(height, unit)} · ${formatLength(height, otherUnit(unit))}`
}

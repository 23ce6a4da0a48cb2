import { largestCircleAcross } from '#analysis/largestCircle.ts'
import type { SchemeResult } from '#analysis/results.ts'
import { heightRows, riseInside } from '#ui/panels/ledger/heightRows.ts'
import { DetailRows, LedgerLine } from '#ui/panels/ledger/LedgerLine.tsx'
import { bothAreas, otherUnit, signed } from '#ui/panels/words.ts'
import { formatArea, formatLength, formatPercent, formatVolume } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

export interface LineProps {
  readonly result: SchemeResult
  readonly before: SchemeResult | null
  readonly cause: string
  readonly unit: LengthUnit
}

/** Said where the linings leave no floor at all. */
const NOTHING_LEFT = 'the linings meet: no clear floor is left'

/** Whether there is a clear room to speak of, now and, where there is a step to compare with, before it. */
function isLeft(result: SchemeResult | null): boolean {
  return result !== null && result.ledger.parts > 0
}

export function FloorLine({ result, before, cause, unit }: LineProps) {
  const { floorAreaM2: floor, keptPercent } = result.ledger
  const area = (m2: number) => formatArea(m2, unit)
  const obstacles = floor.obstacles > 0.00005 ? ` · obstacles ${area(floor.obstacles)}` : ''
  const gained = floor.gained > 0.00005 ? ` · gained ${area(floor.gained)}` : ''
  return (
    <LedgerLine
      name="Floor kept"
      aside={formatPercent(keptPercent)}
      figure={area(floor.clear)}
      second={isLeft(result) ? formatArea(floor.clear, otherUnit(unit)) : NOTHING_LEFT}
      from={`of ${area(floor.existing)} · lost ${area(floor.lost)}${obstacles}${gained}`}
      change={before && signed(floor.clear - before.ledger.floorAreaM2.clear, area)}
      cause={cause}
    >
      <DetailRows caption="Where the floor goes" rows={floorRows(result, unit)} />
    </LedgerLine>
  )
}

function floorRows(result: SchemeResult, unit: LengthUnit): readonly (readonly [string, string])[] {
  const { ledger } = result
  const floor = ledger.floorAreaM2
  const width = formatLength(ledger.clearSizeMm.width, unit)
  const length = formatLength(ledger.clearSizeMm.length, unit)
  return [
    ['Floor as it stands', bothAreas(floor.existing, unit)],
    ...result.surfaces
      .filter((surface) => surface.kind === 'wall')
      .map(
        (wall) =>
          [
            `${wall.label} takes${wall.swallowed ? ' (no face left in the clear room)' : ''}`,
            bothAreas(wall.areaLostM2, unit),
          ] as const,
      ),
    ['All strips', bothAreas(floor.lostToWalls + floor.lostToObstacleLinings, unit)],
    ['Gained by removing linings', bothAreas(floor.gained, unit)],
    ['Obstacles', bothAreas(floor.obstacles, unit)],
    ['Linings round obstacles', bothAreas(floor.lostToObstacleLinings, unit)],
    ...(floor.lostToBoxes > 0 ? [['Silencer boxes that stand', bothAreas(floor.lostToBoxes, unit)] as const] : []),
    ['Clear floor', bothAreas(floor.clear, unit)],
    ...partRows(result, unit),
    ['Clear size, along its longest wall', isLeft(result) ? `${length} × ${width}` : 'none'],
    [
      'Largest circle that fits',
      isLeft(result) ? `${formatLength(largestCircleAcross(result.clear), unit)} across` : 'none',
    ],
    ['Allowance for treatment inside', 'none'],
  ]
}

function partRows({ clear }: SchemeResult, unit: LengthUnit): readonly (readonly [string, string])[] {
  if (clear.length < 2) return []
  return clear.map((part, index) => [`Part ${index + 1} of ${clear.length}`, bothAreas(part.areaMm2 / 1e6, unit)])
}

export function HeightLine({ result, before, cause, unit }: LineProps) {
  const { clearHeightMm: height, drops } = result.ledger
  const length = (mm: number) => formatLength(mm, unit)
  const lowestDrop = drops.reduce<(typeof drops)[number] | null>(
    (lowest, drop) => (lowest === null || drop.clearHeightMm < lowest.clearHeightMm ? drop : lowest),
    null,
  )
  const left = isLeft(result)
  const rise = riseInside(height)
  const more = left && length(rise) !== length(0) ? `, ${length(rise)} more inside the linings` : ''
  const under = lowestDrop && left ? ` · ${length(lowestDrop.clearHeightMm)} under ${lowestDrop.name}` : ''
  return (
    <LedgerLine
      name="Lowest clear height"
      aside={drops.length > 0 && left ? 'away from drops' : undefined}
      figure={left ? length(height.lowest) : 'none'}
      second={left ? formatLength(height.lowest, otherUnit(unit)) : undefined}
      from={`of ${length(height.existing)}${more} · ceiling takes ${length(height.ceilingTakes)}, floor ${length(height.floorTakes)}${under}`}
      change={
        before && left && isLeft(before) ? signed(height.lowest - before.ledger.clearHeightMm.lowest, length) : null
      }
      cause={cause}
    >
      <DetailRows caption="Where the height goes" rows={heightRows(result, unit)} />
    </LedgerLine>
  )
}

export function VolumeLine({ result, before, cause, unit }: LineProps) {
  const { volumeM3: volume } = result.ledger
  const left = isLeft(result)
  const text = (m3: number) => formatVolume(m3, unit)
  const share = volume.existing > 0 ? formatPercent((volume.clear / volume.existing) * 100) : undefined
  return (
    <LedgerLine
      name="Volume kept"
      aside={left ? share : undefined}
      figure={left ? text(volume.clear) : 'none'}
      second={left ? formatVolume(volume.clear, otherUnit(unit)) : undefined}
      from={`of ${text(volume.existing)}`}
      change={before && signed(volume.clear - before.ledger.volumeM3.clear, text)}
      cause={cause}
    >
      <DetailRows
        caption="Where the volume goes"
        rows={[
          ['Volume as it stands', `${text(volume.existing)} · ${formatVolume(volume.existing, otherUnit(unit))}`],
          ['Clear volume', `${text(volume.clear)} · ${formatVolume(volume.clear, otherUnit(unit))}`],
        ]}
      />
    </LedgerLine>
  )
}

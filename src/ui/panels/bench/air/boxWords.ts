import { stands } from '#analysis/boxes/placed.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { SilencerBox } from '#analysis/scheme.ts'
import { bothHeights } from '#ui/panels/ledger/heightRows.ts'
import { bothAreas } from '#ui/panels/words.ts'
import { formatVolume } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** What a box takes of the room, name and figure. */
export function boxTakes(
  box: SilencerBox,
  { ledger }: Pick<SchemeResult, 'ledger'>,
  units: LengthUnit,
): readonly (readonly [string, string])[] {
  const volumeM3 = (box.widthMm * box.depthMm * box.heightMm) / 1e9
  const inAll = formatVolume(volumeM3, units)
  if (stands({ box })) {
    const areaM2 = (box.widthMm * box.depthMm) / 1e6
    return [
      ['It takes of the floor', `${bothAreas(areaM2, units)}, less what stands in linings`],
      ['It fills', inAll],
    ]
  }
  const under = ledger.drops.find(({ id }) => id === box.id)?.clearHeightMm ?? box.undersideMm
  return [
    ['Clear height under it', bothHeights(under, units)],
    ['It fills', inAll],
  ]
}

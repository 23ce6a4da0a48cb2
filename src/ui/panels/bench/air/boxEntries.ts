import type { SilencerBox } from '#analysis/scheme.ts'
import { type BoxPatch, changeBox } from '#state/commands/boxes.ts'
import type { LengthEntry } from '#ui/panels/bench/tables/entries.ts'

const SIZE = { leastMm: 0, moreThanLeast: true } as const

/** Every length of a silencer box, for its table and its form alike. */
export function boxEntries(schemeId: string, box: SilencerBox): readonly LengthEntry[] {
  const change = (patch: BoxPatch) => changeBox(schemeId, box.id, patch)
  const size = (key: 'widthMm' | 'depthMm' | 'heightMm', head: string): LengthEntry => ({
    key: head.toLowerCase(),
    head,
    label: head,
    value: box[key],
    ...SIZE,
    command: (value) => change({ [key]: value }),
  })
  return [
    { key: 'x', head: 'x', label: 'x of its middle', value: box.xMm, command: (xMm) => change({ xMm }) },
    { key: 'y', head: 'y', label: 'y of its middle', value: box.yMm, command: (yMm) => change({ yMm }) },
    size('widthMm', 'Width'),
    size('depthMm', 'Depth'),
    size('heightMm', 'Height'),
    {
      key: 'underside',
      head: 'Height under it',
      label: 'Height under it, 0 where it stands',
      value: box.undersideMm,
      leastMm: 0,
      command: (undersideMm) => change({ undersideMm }),
    },
  ]
}

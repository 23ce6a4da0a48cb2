import type { PlacedBox } from '#analysis/boxes/placed.ts'
import { volumeUnder } from '#analysis/heights/measure.ts'
import { levelPlane, planeOver } from '#analysis/heights/plane.ts'
import type { HeightPatch } from '#analysis/results.ts'
import { intersection } from '#geometry/clip.ts'

/**
 * What boxes fill of a clear room, mm3: their footprint inside it, from their underside to their top, or to what hangs
 * there already. Where two boxes are drawn into each other both count, and their check says so.
 * @param patches  of the clear room without the boxes
 */
export function boxesVolume(patches: readonly HeightPatch[], boxes: readonly PlacedBox[]): number {
  return boxes.reduce((sum, one) => sum + boxVolume(patches, one), 0)
}

function boxVolume(patches: readonly HeightPatch[], { box, footprint }: PlacedBox): number {
  return patches.reduce((sum, { plan, plane }) => {
    const shared = intersection(plan, [{ outline: footprint, holes: [] }])
    if (shared.length === 0) return sum
    const above = (heightMm: number) => volumeUnder({ plan: shared, plane: planeOver(plane, levelPlane(heightMm)) })
    return sum + above(box.undersideMm) - above(box.undersideMm + box.heightMm)
  }, 0)
}

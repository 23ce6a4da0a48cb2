import type { DropBox } from '#analysis/heights/boxes.ts'
import { cutAtZero } from '#analysis/heights/measure.ts'
import { levelPlane, planeAt, planeOver } from '#analysis/heights/plane.ts'
import { mayMeet, type Region } from '#analysis/heights/regions.ts'
import type { HeightPatch, Plane } from '#analysis/results.ts'
import { difference, intersection } from '#geometry/clip.ts'
import { boundingBox } from '#geometry/outline.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'

/** What is left of the regions away from drops, and the patches under them. */
export interface Parted {
  readonly away: readonly Region[]
  readonly under: readonly HeightPatch[]
}

/**
 * Takes what lies under boxed drops out of the regions: under each place the lowest box counts, and a box counts only
 * where it hangs lower than the ceiling's face.
 * @param floor  the face of the floor, from which heights count
 */
export function partAtBoxes(regions: readonly Region[], boxes: readonly DropBox[], floor: Plane): Parted {
  const under: HeightPatch[] = []
  let away = regions
  for (const box of [...boxes].sort((a, b) => a.bottomMm - b.bottomMm)) {
    const plane = planeOver(levelPlane(box.bottomMm), floor)
    away = away.flatMap((region) => {
      if (!mayMeet(region.plan, box.plan)) return [region]
      const found = boxed(region, box)
      if (found.length === 0) return [region]
      under.push({ plan: found, plane, drop: box.id })
      const plan = difference(region.plan, found)
      return plan.length > 0 ? [{ ...region, plan }] : []
    })
  }
  return { away, under }
}

/** What of a region lies under a box that hangs lower than its ceiling. */
function boxed(region: Region, box: DropBox): readonly Polygon[] {
  const shared = intersection(region.plan, box.plan)
  const below = planeOver(region.ceiling, levelPlane(box.bottomMm))
  const corners = shared.flatMap(({ outline }) => [...outline])
  if (corners.every((corner) => planeAt(below, corner) > 0)) return shared
  const around = boundingBox(corners)
  if (!around || corners.every((corner) => planeAt(below, corner) <= 0)) return []
  const { minX, minY, maxX, maxY } = around
  const whole: Point[] = [
    [minX - 1, minY - 1],
    [maxX + 1, minY - 1],
    [maxX + 1, maxY + 1],
    [minX - 1, maxY + 1],
  ]
  return intersection(shared, [{ outline: cutAtZero(whole, below), holes: [] }])
}

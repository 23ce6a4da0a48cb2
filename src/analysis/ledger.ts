import { type BoxedDrop, boxedDrops, clearVolume, existingHeight } from '#analysis/heights.ts'
import type { Ledger, SurfaceResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Assembly } from '#assemblies/assembly.ts'
import type { Inset } from '#geometry/inset/insetRoom.ts'
import { boxAlongLongestWall, largestCircle } from '#geometry/outline.ts'
import type { Millimetres } from '#units/quantity.ts'

const MM2_PER_M2 = 1e6

/** What the ledger needs to know of the ceiling and the floor before the strips are weighed. */
export interface HeightsTaken {
  readonly ceilingTakes: Millimetres
  readonly floorTakes: Millimetres
}

/** Clear height away from drops. */
export function clearHeight(room: Room, taken: HeightsTaken): Millimetres {
  return existingHeight(room) - taken.ceilingTakes - taken.floorTakes
}

/** Space before, taken by what, and left. */
export function ledgerOf(
  room: Room,
  inset: Inset,
  surfaces: readonly SurfaceResult[],
  taken: HeightsTaken,
  ceilingAssembly: Assembly | null,
): Ledger {
  const lowest = clearHeight(room, taken)
  const drops = boxedDrops(room, taken.floorTakes)
  const clearM2 = sumAreas(inset.clear) / MM2_PER_M2
  const existingM2 = inset.outlineMm2 / MM2_PER_M2
  const ceiling = surfaces.find((surface) => surface.kind === 'ceiling')
  return {
    floorAreaM2: floorAreas(room, inset, existingM2, clearM2),
    keptPercent: (clearM2 / existingM2) * 100,
    clearSizeMm: clearSize(inset),
    clearHeightMm: {
      existing: existingHeight(room),
      floorTakes: taken.floorTakes,
      ceilingTakes: taken.ceilingTakes,
      lowest,
      mean: lowest,
    },
    areaAbove: [],
    drops: drops.map(underDrop(lowest)),
    volumeM3: {
      existing: (existingM2 * existingHeight(room)) / 1000,
      clear: Math.max(0, clearVolume(inset.clear, Math.max(0, lowest), drops)),
    },
    largestCircleMm: inset.clear[0] ? 2 * largestCircle(inset.clear[0]).radiusMm : 0,
    parts: inset.clear.length,
    addedMassKg: surfaces.reduce((sum, surface) => sum + surface.addedMassKg, 0),
    onJoistsKgM2: ceilingAssembly?.loadsExistingJoists ? (ceiling?.addedMassKgM2 ?? 0) : 0,
  }
}

function floorAreas(room: Room, inset: Inset, existing: number, clear: number): Ledger['floorAreaM2'] {
  const walls = inset.strips.filter((strip) => strip.wall < room.walls.length)
  const lost = inset.lostMm2 / MM2_PER_M2
  const lostToWalls = sumAreas(walls) / MM2_PER_M2
  return {
    existing,
    gained: inset.gainedMm2 / MM2_PER_M2,
    obstacles: inset.obstaclesMm2 / MM2_PER_M2,
    lost,
    lostToWalls,
    lostToObstacleLinings: lost - lostToWalls,
    clear,
  }
}

/** A box can't be seen where the ceiling hangs lower than it: the ceiling's height counts; none is left under one that reaches the floor. */
function underDrop(lowest: Millimetres) {
  return (drop: BoxedDrop) => ({
    id: drop.id,
    name: drop.name,
    clearHeightMm: Math.max(0, Math.min(drop.clearHeightMm, lowest)),
  })
}

function clearSize(inset: Inset): Ledger['clearSizeMm'] {
  const largest = inset.clear[0]
  if (!largest) return { width: 0, length: 0 }
  const box = boxAlongLongestWall(largest.outline)
  return { width: box.acrossMm, length: box.alongMm }
}

export function sumAreas(parts: readonly { readonly areaMm2: number }[]): number {
  return parts.reduce((sum, part) => sum + part.areaMm2, 0)
}

import type { ExistingSpace } from '#analysis/heights/existing.ts'
import { floorTakesAt } from '#analysis/heights/faces.ts'
import { type ClearSpace, leastUnder, lowestPlace } from '#analysis/heights/field.ts'
import { areaUnder, volumeUnder } from '#analysis/heights/measure.ts'
import { planeAt } from '#analysis/heights/plane.ts'
import type { Ledger, SurfaceResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Assembly } from '#assemblies/assembly.ts'
import type { Inset } from '#geometry/inset/insetRoom.ts'
import { boxAlongLongestWall, centroid } from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

const MM2_PER_M2 = 1e6

/** Heights worth telling the floor area of, 5 ft and 7 ft exactly. @source common practice, no source */
const TOLD_HEIGHTS_MM: readonly Millimetres[] = [1524, 2133.6]

export interface LedgerInput {
  readonly room: Room
  readonly inset: Inset
  readonly surfaces: readonly SurfaceResult[]
  readonly existing: ExistingSpace
  readonly space: ClearSpace
  readonly ceilingAssembly: Assembly | null
}

/** Space before, taken by what, and left. */
export function ledgerOf({ room, inset, surfaces, existing, space, ceilingAssembly }: LedgerInput): Ledger {
  const clearM2 = sumAreas(inset.clear) / MM2_PER_M2
  const existingM2 = inset.outlineMm2 / MM2_PER_M2
  const ceiling = surfaces.find((surface) => surface.kind === 'ceiling')
  const { patches } = space.field
  const clearM3 = patches.reduce((sum, patch) => sum + volumeUnder(patch), 0) / 1e9
  const heights = heightsAtLowest(room, space)
  return {
    floorAreaM2: floorAreas(room, inset, existingM2, clearM2),
    keptPercent: (clearM2 / existingM2) * 100,
    clearSizeMm: clearSize(inset),
    clearHeightMm: {
      existing: existing.lowestMm,
      ...heights,
      mean: clearM2 > 0 ? (clearM3 / clearM2) * 1000 : heights.lowest,
    },
    areaAbove: TOLD_HEIGHTS_MM.map((heightMm) => ({
      heightMm,
      areaM2: patches.reduce((sum, patch) => sum + areaUnder(patch, heightMm), 0) / MM2_PER_M2,
    })),
    drops: underDrops(room, space, heights.lowest),
    volumeM3: { existing: existing.volumeMm3 / 1e9, clear: clearM3 },
    parts: inset.clear.length,
    addedMassKg: surfaces.reduce((sum, surface) => sum + surface.addedMassKg, 0),
    onJoistsKgM2: ceilingAssembly?.loadsExistingJoists ? (ceiling?.addedMassKgM2 ?? 0) : 0,
  }
}

/** The lowest clear height, and what floor and ceiling take just there; at the first corner where no floor is left. */
function heightsAtLowest(room: Room, space: ClearSpace) {
  const { faces } = space
  const { levels } = faces
  const lowest = lowestPlace(space)
  const corner = room.corners[0]
  const at: Point = lowest?.at ?? (corner ? [corner.xMm, corner.yMm] : [0, 0])
  const part = levels.parts.find(({ id }) => id === lowest?.shape.part)
  const ceiling = lowest?.shape.ceiling ?? faces.ceiling
  return {
    floorTakes: floorTakesAt(faces, at),
    ceilingTakes: planeAt(part?.ceiling ?? levels.ceiling, at) - planeAt(ceiling, at),
    lowest: lowest?.heightMm ?? Math.max(0, planeAt(ceiling, at) - planeAt(faces.floor, at)),
  }
}

/** The height under every drop; of one that hangs over no clear floor, what it would be at its middle. */
function underDrops(room: Room, space: ClearSpace, lowest: Millimetres): Ledger['drops'] {
  return space.boxes.map((box, k) => {
    const middle = centroid((room.drops[k]?.corners ?? []).map(({ xMm, yMm }): Point => [xMm, yMm])) ?? [0, 0]
    const nominal = Math.max(0, Math.min(box.bottomMm - planeAt(space.faces.floor, middle), lowest))
    return { id: box.id, name: box.name, clearHeightMm: leastUnder(space, box) ?? nominal }
  })
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

function clearSize(inset: Inset): Ledger['clearSizeMm'] {
  const largest = inset.clear[0]
  if (!largest) return { width: 0, length: 0 }
  const box = boxAlongLongestWall(largest.outline)
  return { width: box.acrossMm, length: box.alongMm }
}

export function sumAreas(parts: readonly { readonly areaMm2: number }[]): number {
  return parts.reduce((sum, part) => sum + part.areaMm2, 0)
}

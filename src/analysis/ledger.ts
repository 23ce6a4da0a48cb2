import { type PlacedBox, stands } from '#analysis/boxes/placed.ts'
import { boxesVolume } from '#analysis/boxes/volume.ts'
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
import type { Point, Polygon } from '#geometry/polygon.ts'
import type { CubicMetres, Millimetres, SquareMetres } from '#units/quantity.ts'

const MM2_PER_M2 = 1e6

/** Heights worth telling the floor area of, 5 ft and 7 ft exactly. @source common practice, no source */
const TOLD_HEIGHTS_MM: readonly Millimetres[] = [1524, 2133.6]

export interface LedgerInput {
  readonly room: Room
  readonly inset: Inset
  readonly surfaces: readonly SurfaceResult[]
  readonly existing: ExistingSpace
  /** What is left beside and under the boxes: clear plan, and its heights. */
  readonly clear: readonly Polygon[]
  readonly space: ClearSpace
  readonly boxes: readonly PlacedBox[]
  /** Heights without the boxes; the same as of `space` where there are none. */
  readonly withoutBoxes: ClearSpace
  readonly ceilingAssembly: Assembly | null
}

/** Space before, taken by what, and left. */
export function ledgerOf(input: LedgerInput): Ledger {
  const { room, inset, surfaces, existing, clear, space, ceilingAssembly } = input
  const clearM2 = sumAreas(clear) / MM2_PER_M2
  const existingM2 = inset.outlineMm2 / MM2_PER_M2
  const ceiling = surfaces.find((surface) => surface.kind === 'ceiling')
  const { patches } = space.field
  const overClearM3 = volumeOf(space)
  const heights = heightsAtLowest(room, space)
  return {
    floorAreaM2: floorAreas(input, existingM2, clearM2),
    keptPercent: (clearM2 / existingM2) * 100,
    clearSizeMm: clearSize(clear),
    clearHeightMm: {
      existing: existing.lowestMm,
      ...heights,
      mean: clearM2 > 0 ? (overClearM3 / clearM2) * 1000 : heights.lowest,
    },
    areaAbove: TOLD_HEIGHTS_MM.map((heightMm) => ({
      heightMm,
      areaM2: patches.reduce((sum, patch) => sum + areaUnder(patch, heightMm), 0) / MM2_PER_M2,
    })),
    drops: underDrops(room, space, heights.lowest),
    volumeM3: { existing: existing.volumeMm3 / 1e9, clear: clearVolume(input) },
    parts: clear.length,
    addedMassKg: surfaces.reduce((sum, surface) => sum + surface.addedMassKg, 0),
    onJoistsKgM2: ceilingAssembly?.loadsExistingJoists ? (ceiling?.addedMassKgM2 ?? 0) : 0,
  }
}

/** Under the ceiling and under what hangs from it, m3. */
function volumeOf({ field }: ClearSpace): CubicMetres {
  return field.patches.reduce((sum, patch) => sum + volumeUnder(patch), 0) / 1e9
}

function clearVolume({ boxes, withoutBoxes }: LedgerInput): CubicMetres {
  return Math.max(0, volumeOf(withoutBoxes) - boxesVolume(withoutBoxes.field.patches, boxes) / 1e9)
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

function floorAreas(
  { room, inset, boxes }: LedgerInput,
  existing: SquareMetres,
  clear: SquareMetres,
): Ledger['floorAreaM2'] {
  const walls = inset.strips.filter((strip) => strip.wall < room.walls.length)
  const linings = inset.lostMm2 / MM2_PER_M2
  const lostToWalls = sumAreas(walls) / MM2_PER_M2
  const lostToBoxes = boxes.some(stands) ? sumAreas(inset.clear) / MM2_PER_M2 - clear : 0
  return {
    existing,
    gained: inset.gainedMm2 / MM2_PER_M2,
    obstacles: inset.obstaclesMm2 / MM2_PER_M2,
    lost: linings + lostToBoxes,
    lostToWalls,
    lostToObstacleLinings: linings - lostToWalls,
    lostToBoxes,
    clear,
  }
}

function clearSize([largest]: readonly Polygon[]): Ledger['clearSizeMm'] {
  if (!largest) return { width: 0, length: 0 }
  const box = boxAlongLongestWall(largest.outline)
  return { width: box.acrossMm, length: box.alongMm }
}

export function sumAreas(parts: readonly { readonly areaMm2: number }[]): number {
  return parts.reduce((sum, part) => sum + part.areaMm2, 0)
}

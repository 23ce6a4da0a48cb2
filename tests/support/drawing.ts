import type { Caution, Ledger, SchemeResult, SurfaceRating, SurfaceResult } from '#analysis/results.ts'
import type { Drop, Furniture, Obstacle, Opening, Room, SurfaceFacts } from '#analysis/room.ts'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { combineLayers } from '#assemblies/combine.ts'
import { layersDepth } from '#assemblies/layer.ts'
import { insetRoom } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'

/** A drawn room: corners, and what stands in it; walls are w1, w2 ... */
export interface RoomPlan {
  readonly corners: readonly (readonly [number, number])[]
  readonly openings?: readonly Opening[]
  readonly obstacles?: readonly Obstacle[]
  readonly drops?: readonly Drop[]
  readonly heightMm?: number
  readonly name?: string
}

function facts(id: string, existing: string): SurfaceFacts {
  return { id, existing, farSide: 'outdoors', measuredTo: 'structure', lining: null, outOfTrueMm: 0 }
}

/** A room as the analysis takes it, bare studs all round. */
export function aPlanRoom(plan: RoomPlan): Room {
  const count = plan.corners.length
  return {
    id: 'room',
    name: plan.name ?? 'Garage',
    corners: plan.corners.map(([xMm, yMm], index) => ({ id: `c${index + 1}`, xMm, yMm })),
    walls: plan.corners.map((_, index) => ({
      ...facts(`w${index + 1}`, 'stud-2x4-osb-siding'),
      from: `c${index + 1}`,
      to: `c${((index + 1) % count) + 1}`,
    })),
    ceiling: facts('ceiling', 'truss-osb-shingles'),
    floor: facts('floor', 'slab-on-ground'),
    heights: [{ id: 'h1', xMm: 0, yMm: 0, heightMm: plan.heightMm ?? 2590.8, floorMm: 0 }],
    ceilingShape: 'as-measured',
    ceilingParts: [],
    obstacles: plan.obstacles ?? [],
    drops: plan.drops ?? [],
    openings: plan.openings ?? [],
    furniture: [],
    diagonals: [],
  }
}

/** A scheme's result with the true geometry and made-up ratings; one assembly a wall, then ceiling and floor. */
export function aPlanResult(
  room: Room,
  walls: readonly string[],
  cautions: readonly Caution[] = [],
  [ceiling, floor]: readonly [string, string] = ['C08', 'F01'],
): SchemeResult {
  const catalogue = builtInCatalogue()
  const depthOf = (id: string): number => {
    const assembly = catalogue.assemblies.get(id)
    return assembly ? layersDepth(assembly.layers) : 0
  }
  const idAt = (index: number): string => walls[index % walls.length]!
  const inset = insetRoom({
    outline: room.corners.map(({ xMm, yMm }): Point => [xMm, yMm]),
    depthsMm: room.walls.map((_, index) => depthOf(idAt(index))),
    obstacles: room.obstacles.map((obstacle) => ({
      outline: obstacle.corners.map(({ xMm, yMm }): Point => [xMm, yMm]),
      depthsMm: obstacle.corners.map(() => obstacle.liningMm),
    })),
  })
  if (!inset.ok) throw new Error(inset.error.message)
  const clear = [...inset.value.clear].sort((a, b) => b.areaMm2 - a.areaMm2)
  const surface = (
    of: SurfaceFacts,
    kind: SurfaceResult['kind'],
    label: string,
    id: string,
    stc: number,
  ): SurfaceResult => {
    const assembly = catalogue.assemblies.get(id) ?? null
    const built = combineLayers({ existing: catalogue.existing.get(of.existing)!, lining: null, assembly })
    return {
      id: of.id,
      kind,
      label,
      assembly: id,
      assemblyName: assembly?.name ?? 'as it stands',
      removeLining: false,
      hasLining: false,
      netDepthMm: depthOf(id),
      depthFromFaceMm: depthOf(id),
      depthFromStructureMm: depthOf(id),
      areaLostM2: 0,
      clearLengthMm: 0,
      swallowed: false,
      soundAreaM2: 10,
      addedMassKgM2: 20,
      addedMassKg: 300,
      layers: built.layers,
      existingLayerCount: built.existingLayerCount,
      rating: kind === 'floor' ? null : aRating(stc),
      notes: [],
    }
  }
  return {
    schemeId: 'scheme',
    name: 'C independent room',
    inset: inset.value,
    clear,
    ledger: aLedger(
      room,
      clear.reduce((sum, part) => sum + part.areaMm2, 0),
      inset.value.outlineMm2,
      clear[0]?.outline ?? [],
    ),
    surfaces: [
      ...room.walls.map((wall, index) =>
        surface(wall, 'wall', `Wall ${index + 1}`, idAt(index), 52 + ((walls.indexOf(idAt(index)) * 7) % 15)),
      ),
      surface(room.ceiling, 'ceiling', 'Ceiling', ceiling, 58),
      surface(room.floor, 'floor', 'Floor', floor, 50),
    ],
    cautions,
    heights: { patches: [], worstMissMm: 0 },
    openings: [],
    furniture: [],
    boxes: [],
    corners: [],
    lowestRated: { surfaceId: 'w1', stc: 52 },
  }
}

function aRating(stc: number): SurfaceRating {
  return {
    stc,
    stcNo8dbRule: stc + 2,
    rw: stc - 1,
    c: -2,
    ctr: -8,
    plusMinus95: 4,
    likely: [stc - 4, stc + 4],
    published: [],
  } as unknown as SurfaceRating
}

function aLedger(room: Room, clearMm2: number, outlineMm2: number, clear: readonly Point[]): Ledger {
  const xs = clear.map(([x]) => x)
  const ys = clear.map(([, y]) => y)
  const existing = room.heights[0]!.heightMm
  const lowest = existing - 209.55
  return {
    floorAreaM2: {
      existing: outlineMm2 / 1e6,
      gained: 0,
      obstacles: 0,
      lost: (outlineMm2 - clearMm2) / 1e6,
      lostToWalls: (outlineMm2 - clearMm2) / 1e6,
      lostToObstacleLinings: 0,
      lostToBoxes: 0,
      clear: clearMm2 / 1e6,
    },
    keptPercent: (100 * clearMm2) / outlineMm2,
    clearSizeMm: { width: Math.max(...xs) - Math.min(...xs), length: Math.max(...ys) - Math.min(...ys) },
    clearHeightMm: { existing, floorTakes: 12.7, ceilingTakes: 196.85, lowest, mean: lowest },
    areaAbove: [],
    drops: room.drops.map(({ id, name, undersideMm }) => ({ id, name, clearHeightMm: undersideMm - 85 })),
    volumeM3: { existing: (outlineMm2 * existing) / 1e9, clear: (clearMm2 * lowest) / 1e9 },
    parts: 1,
    addedMassKg: 1940,
    onJoistsKgM2: 0,
  }
}

/** What an opening says of leaves until somebody says better. */
const SHUT = {
  hinge: 'from',
  swing: 'in',
  leaves: 'one',
  hungIn: 'existing',
  lobby: null,
  revealLiningMm: 0,
  shape: 'rectangular',
} as const

/** A door of 32 by 80 in, 1 m along the second wall. */
export function aDoor(more: Partial<Opening>): Opening {
  const size = { fromMm: 1000, widthMm: 812.8, heightMm: 2032, sillMm: 0 }
  return { id: 'd1', kind: 'door', name: 'Door', wall: 'w2', ...size, ...SHUT, ...more }
}

/** A desk of 1600 by 800 mm in the middle of a garage, with room for a chair before it. */
export function aPiece(more: Partial<Furniture> = {}): Furniture {
  const size = { xMm: 1800, yMm: 3000, widthMm: 1600, depthMm: 800, heightMm: 750, angleDeg: 0 }
  const clearance = { frontMm: 900, backMm: 0, leftMm: 0, rightMm: 0 }
  return { id: 'f1', kind: 'desk', name: 'Desk', ...size, clearance, ...more }
}

/** 12 by 20 ft with a vehicle door, a side door and a window. */
export function aGarage(): Room {
  return aPlanRoom({
    corners: [
      [0, 0],
      [3657.6, 0],
      [3657.6, 6096],
      [0, 6096],
    ],
    openings: [
      {
        id: 'o1',
        kind: 'vehicle-door',
        name: 'Vehicle door, infilled',
        wall: 'w1',
        fromMm: 609.6,
        widthMm: 2438.4,
        heightMm: 2133.6,
        sillMm: 0,
        ...SHUT,
      },
      {
        id: 'o2',
        kind: 'door',
        name: 'Side door',
        wall: 'w2',
        fromMm: 4673.6,
        widthMm: 812.8,
        heightMm: 2032,
        sillMm: 0,
        ...SHUT,
      },
      {
        id: 'o3',
        kind: 'window',
        name: 'Back window',
        wall: 'w3',
        fromMm: 1371.6,
        widthMm: 914.4,
        heightMm: 609.6,
        sillMm: 1371.6,
        ...SHUT,
      },
    ],
  })
}

/** An L of 24 by 20 ft with a column, a beam, a duct, a door and a window. */
export function aBasement(): Room {
  const box = (x0: number, y0: number, x1: number, y1: number) => [
    { xMm: x0, yMm: y0 },
    { xMm: x1, yMm: y0 },
    { xMm: x1, yMm: y1 },
    { xMm: x0, yMm: y1 },
  ]
  return aPlanRoom({
    name: 'Basement',
    heightMm: 2336.8,
    corners: [
      [0, 0],
      [7315.2, 0],
      [7315.2, 4267.2],
      [4267.2, 4267.2],
      [4267.2, 6096],
      [0, 6096],
    ],
    openings: [
      {
        id: 'o1',
        kind: 'door',
        name: 'Stair door',
        wall: 'w4',
        fromMm: 711.2,
        widthMm: 812.8,
        heightMm: 2032,
        sillMm: 0,
        ...SHUT,
      },
      {
        id: 'o2',
        kind: 'window',
        name: 'Escape window',
        wall: 'w1',
        fromMm: 914.4,
        widthMm: 812.8,
        heightMm: 914.4,
        sillMm: 1066.8,
        ...SHUT,
      },
    ],
    obstacles: [
      { id: 'column', name: 'Steel column, boxed', corners: box(3759.2, 2082.8, 3860.8, 2184.4), liningMm: 76.2 },
    ],
    drops: [
      {
        id: 'beam',
        name: 'Steel beam',
        corners: box(0, 2057.4, 7315.2, 2209.8),
        undersideMm: 2159,
        boxBelowMm: 73.025,
        boxSidesMm: 73.025,
      },
      {
        id: 'duct',
        name: 'Duct trunk',
        corners: box(0, 4826, 4267.2, 5334),
        undersideMm: 2108.2,
        boxBelowMm: 95.25,
        boxSidesMm: 95.25,
      },
    ],
  })
}

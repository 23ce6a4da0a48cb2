import { type Grid, toMm2 } from '#geometry/grid.ts'
import type { GridRoom } from '#geometry/inset/floorEdges.ts'
import type { SourceWall } from '#geometry/inset/gridRing.ts'
import { innerEdges, sectionOf } from '#geometry/inset/innerEdges.ts'
import { addUp, gainedLabels } from '#geometry/inset/ledger.ts'
import { CLEAR, type Overlay } from '#geometry/inset/overlay.ts'
import type { InnerEdge, Inset, Strip, WallResult } from '#geometry/inset/types.ts'
import { warningsOf } from '#geometry/inset/warnings.ts'
import { type GridShape, readShapes, traceBoundaries } from '#geometry/overlay/readBack.ts'
import { toPolygon } from '#geometry/overlay/toPolygon.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'

/** The room as given and as it lies on the grid. */
export interface ReadContext {
  readonly outlines: readonly (readonly Point[])[]
  readonly sources: readonly SourceWall[]
  readonly room: GridRoom
  readonly grid: Grid
}

/** Less of a wall than this (mm) along the clear room is rounding, not wall. */
const LEAST_LENGTH_MM = 0.05

/** Reads the answer off the settled drawing. */
export function readInset(overlay: Overlay, context: ReadContext): Inset {
  const { grid, room, sources } = context
  const { arrangement, labels } = overlay
  const rings = traceBoundaries(arrangement, labels)
  const shapes = readShapes(arrangement, labels, rings)
  const gained = gainedShapes(overlay, room)
  const ledger = addUp(overlay, shapes, gained)
  const clear: Polygon[] = []
  const strips: Strip[] = []
  for (const shape of shapes) {
    if (shape.label === CLEAR) clear.push(toPolygon(shape, grid))
    else strips.push({ wall: shape.label, ...toPolygon(shape, grid) })
  }
  clear.sort((one, other) => other.areaMm2 - one.areaMm2)
  strips.sort((one, other) => one.wall - other.wall)
  const edges = innerEdges(overlay, rings, grid)
  const walls = wallResults(strips, edges, sources, grid)
  return {
    clear,
    strips,
    gained: gained.map((shape) => toPolygon(shape, grid)),
    walls,
    edges,
    outlineMm2: toMm2(grid, ledger.outline),
    obstaclesMm2: toMm2(grid, ledger.obstacles),
    gainedMm2: toMm2(grid, ledger.gained),
    lostMm2: toMm2(grid, ledger.lost),
    warnings: warningsOf(context, overlay, { clear, walls, edges }),
    closureGridUnits2: ledger.closure,
  }
}

function gainedShapes(overlay: Overlay, room: GridRoom): GridShape[] {
  const nothingMoved =
    room.movedOutline === room.outline && room.obstacles.every((ring, k) => ring === room.movedObstacles[k])
  if (nothingMoved) return []
  const labels = gainedLabels(overlay)
  return readShapes(overlay.arrangement, labels, traceBoundaries(overlay.arrangement, labels))
}

function wallResults(
  strips: readonly Strip[],
  edges: readonly InnerEdge[],
  sources: readonly SourceWall[],
  grid: Grid,
): WallResult[] {
  const areas = new Float64Array(sources.length)
  for (const strip of strips) areas[strip.wall]! += strip.areaMm2
  const sections = sources.map((): WallResult['sections'][number][] => [])
  for (const edge of edges) {
    if (edge.kind !== 'return') sections[edge.wall]!.push(sectionOf(edge, sources[edge.wall]!, grid))
  }
  return sources.map((source, wall) => {
    const own = sections[wall]!.sort((one, other) => one.s0Mm - other.s0Mm)
    const length = own.reduce((sum, { from, to }) => sum + Math.hypot(to[0] - from[0], to[1] - from[1]), 0)
    return {
      wall,
      clearLengthMm: length,
      swallowed: length < LEAST_LENGTH_MM && source.lengthSteps >= 1,
      areaMm2: areas[wall]!,
      sections: own,
    }
  })
}

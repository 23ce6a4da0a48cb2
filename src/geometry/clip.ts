import polygonClipping, { type MultiPolygon } from 'polygon-clipping'
import { type Grid, gridAround, STEPS_PER_MM, stepsX, stepsY } from '#geometry/grid.ts'
import { combine, type GridRings, type Operation } from '#geometry/overlay/boolean.ts'
import { layCells } from '#geometry/overlay/cells.ts'
import { turn } from '#geometry/overlay/exact.ts'
import { doubledArea, type GridShape } from '#geometry/overlay/readBack.ts'
import { addSegment, createSegments } from '#geometry/overlay/segments.ts'
import { toPolygon } from '#geometry/overlay/toPolygon.ts'
import { someNearPair } from '#geometry/overlay/vertices.ts'
import type { Polygon, Ring } from '#geometry/polygon.ts'
import { invariant } from '#units/result.ts'

/** A shape with rings in any direction; an area it may carry is not read. */
type Shape = Pick<Polygon, 'outline' | 'holes'>

/** What lies in any of the shapes. */
export function union(...operands: readonly (readonly Shape[])[]): Polygon[] {
  return clip('union', operands.flat(), [])
}

/** What lies in a shape of the first operand and in one of the second. */
export function intersection(first: readonly Shape[], second: readonly Shape[]): Polygon[] {
  return clip('intersection', first, second)
}

/** What lies in a shape of the first operand and in none of the second. */
export function difference(first: readonly Shape[], second: readonly Shape[]): Polygon[] {
  return clip('difference', first, second)
}

/** Summed area of shapes that do not overlap, mm2. */
export function areaOf(shapes: readonly Pick<Polygon, 'areaMm2'>[]): number {
  return shapes.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)
}

/**
 * Operands go to the library as whole grid steps: unrounded ones have made it search for ever. It is not asked where
 * sides run along each other, which still can; there, where it throws, and where its area differs from that of our own
 * overlay by more than rounding, the overlay's answer stands.
 */
function clip(operation: Operation, first: readonly Shape[], second: readonly Shape[]): Polygon[] {
  const points = [...first, ...second].flatMap((shape) => shape.outline)
  const grid = gridAround(points, STEPS_PER_MM)
  const firstShapes = first.map((shape) => onGrid(shape, grid)).filter((rings) => rings.length > 0)
  const secondShapes = second.map((shape) => onGrid(shape, grid)).filter((rings) => rings.length > 0)
  const rings = [...firstShapes, ...secondShapes].flat()
  const own = combine(operation, firstShapes.flat(), secondShapes.flat())
  const asked = runAlongEachOther(rings) ? null : askLibrary(operation, firstShapes, secondShapes)
  const agrees = asked && (!own || Math.abs(summed(asked) - summed(own)) <= roundingRoom(rings))
  const shapes = agrees ? asked : own
  invariant(shapes, `${operation} of shapes on the grid has an answer`)
  return shapes.map((shape) => toPolygon(shape, grid))
}

function summed(shapes: readonly GridShape[]): number {
  return shapes.reduce((sum, shape) => sum + shape.doubledArea, 0)
}

/** Twice the area by which rounding every corner by a step can change a result. */
function roundingRoom(rings: GridRings): number {
  let length = 0
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const after = (k + 2) % ring.length
      length += Math.abs(ring[after]! - ring[k]!) + Math.abs(ring[after + 1]! - ring[k + 1]!)
    }
  }
  return 2 * length + 2
}

/** A shape's rings in steps: outline counter-clockwise, holes clockwise; rings without area left out. */
function onGrid({ outline, holes }: Shape, grid: Grid): number[][] {
  const outer = turned(outline, grid, 1)
  if (!outer) return []
  return [outer, ...holes.map((hole) => turned(hole, grid, -1)).filter((hole) => hole !== null)]
}

function turned(ring: Ring, grid: Grid, sign: number): number[] | null {
  const steps = ring.map(([x, y]) => [Math.round(stepsX(grid, x)), Math.round(stepsY(grid, y))] as const)
  const area = steps.length < 3 ? 0 : doubledArea(steps.flat())
  if (area === 0) return null
  return (area * sign > 0 ? steps : steps.reverse()).flat()
}

/** Whether two sides lie on one line and share more than a point. */
function runAlongEachOther(rings: GridRings): boolean {
  const segments = createSegments()
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const after = (k + 2) % ring.length
      addSegment(segments, ring[k]!, ring[k + 1]!, ring[after]!, ring[after + 1]!)
    }
  }
  const { ax, ay, bx, by } = segments
  return someNearPair(segments, layCells(segments), (j, k) => {
    if (turn(ax[j]!, ay[j]!, bx[j]!, by[j]!, ax[k]!, ay[k]!) !== 0) return false
    if (turn(ax[j]!, ay[j]!, bx[j]!, by[j]!, bx[k]!, by[k]!) !== 0) return false
    const along = (x: number, y: number): number => (x - ax[j]!) * (bx[j]! - ax[j]!) + (y - ay[j]!) * (by[j]! - ay[j]!)
    const [from, to] = [along(ax[k]!, ay[k]!), along(bx[k]!, by[k]!)]
    return Math.max(from, to) > 0 && Math.min(from, to) < along(bx[j]!, by[j]!)
  })
}

/** The library's answer on the grid, or null when it throws. One call, so that nothing unrounded comes back to it. */
function askLibrary(
  operation: Operation,
  first: readonly GridRings[],
  second: readonly GridRings[],
): GridShape[] | null {
  try {
    return fromLibrary(polygonClipping[operation](first.map(toLibrary), second.map(toLibrary)))
  } catch {
    return null
  }
}

function asShape([outline, ...holes]: GridRings): GridShape {
  const rings = [outline ?? [], ...holes]
  return { label: 0, outline: rings[0]!, holes, doubledArea: rings.reduce((sum, ring) => sum + doubledArea(ring), 0) }
}

function toLibrary(rings: GridRings): [number, number][][] {
  return rings.map((ring) => {
    const pairs: [number, number][] = []
    for (let k = 0; k < ring.length; k += 2) pairs.push([ring[k]!, ring[k + 1]!])
    return pairs
  })
}

function fromLibrary(shapes: MultiPolygon): GridShape[] {
  const read = shapes.map((rings) =>
    asShape(rings.map((ring) => ring.slice(0, -1).flatMap(([x, y]) => [Math.round(x), Math.round(y)]))),
  )
  return read.filter((shape) => shape.doubledArea > 0)
}

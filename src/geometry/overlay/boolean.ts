import { type Arrangement, arrange } from '#geometry/overlay/arrange.ts'
import { type GridShape, readShapes, traceBoundaries, UNLABELLED } from '#geometry/overlay/readBack.ts'
import { addSegment, createSegments } from '#geometry/overlay/segments.ts'
import { edgeWeights, windingNumbers } from '#geometry/overlay/winding.ts'

/** What belongs to the answer: what lies in either operand, in both, or in the first only. */
export type Operation = 'union' | 'intersection' | 'difference'

/** Rings in whole steps, x and y alternating, the operand's inside on their left; they may overlap each other. */
export type GridRings = readonly (readonly number[])[]

/** Combines two operands on the grid; null when the drawing contradicts itself. */
export function combine(operation: Operation, first: GridRings, second: GridRings): GridShape[] | null {
  const segments = createSegments()
  const inFirst: number[] = []
  const inSecond: number[] = []
  for (const rings of [first, second]) {
    for (const ring of rings) {
      for (let k = 0; k < ring.length; k += 2) {
        const after = (k + 2) % ring.length
        addSegment(segments, ring[k]!, ring[k + 1]!, ring[after]!, ring[after + 1]!)
        inFirst.push(rings === first ? 1 : 0)
        inSecond.push(rings === first ? 0 : 1)
      }
    }
  }
  const arrangement = arrange(segments)
  return arrangement && readAnswer(operation, arrangement, inFirst, inSecond)
}

function readAnswer(
  operation: Operation,
  arrangement: Arrangement,
  inFirst: readonly number[],
  inSecond: readonly number[],
): GridShape[] | null {
  const first = windingNumbers(arrangement, edgeWeights(arrangement, inFirst))
  const second = windingNumbers(arrangement, edgeWeights(arrangement, inSecond))
  if (!first || !second) return null
  const labels = first.map((winding, face) => {
    const isIn = belongs(operation, winding > 0, second[face]! > 0)
    return isIn ? 0 : UNLABELLED
  })
  return readShapes(arrangement, labels, traceBoundaries(arrangement, labels))
}

function belongs(operation: Operation, inFirst: boolean, inSecond: boolean): boolean {
  if (operation === 'union') return inFirst || inSecond
  return inFirst && inSecond === (operation === 'intersection')
}

import type { AnalysisInput } from '#analysis/analyse.ts'
import { bothLengths } from '#analysis/cautions/words.ts'
import { isResilient } from '#analysis/corners/resilient.ts'
import corners from '#analysis/data/corners.json'
import type { CornerAsBuilt, SchemeResult } from '#analysis/results.ts'
import type { Wall } from '#analysis/room.ts'
import { choiceFor } from '#analysis/scheme.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Left at the butt of two linings, and sealed. @source data/corners.json */
const GAP_MM: Millimetres = corners.gapMm.value
/** Walls as long as each other within this are equally long, mm. */
const SAME_LENGTH_MM = 0.5

/** A wall at a corner. */
interface Side {
  readonly wall: Wall
  readonly label: string
  readonly lengthMm: Millimetres
  readonly isBuilt: boolean
  readonly isResilient: boolean
}

/**
 * Which lining runs through at every corner, the gap left, and where a resilient one would touch an untreated wall.
 * Unless the user chose, the lining of the longer wall runs through, of equal ones that of the wall before the corner;
 * a lining runs past a wall with none. The space account keeps the mitre whatever is chosen.
 */
export function cornersAsBuilt(
  input: AnalysisInput,
  { surfaces }: Pick<SchemeResult, 'surfaces'>,
): readonly CornerAsBuilt[] {
  const { room, scheme } = input
  const depths = new Map(surfaces.map(({ id, netDepthMm }) => [id, netDepthMm]))
  const sides = room.walls.map((wall, index) => sideOf(input, wall, index, depths.get(wall.id) ?? 0))
  return room.corners.flatMap(({ id }, index): CornerAsBuilt[] => {
    const before = sides[(index + sides.length - 1) % sides.length]
    const after = sides[index]
    if (!before || !after) return []
    const chosen = scheme.runsThrough && Object.hasOwn(scheme.runsThrough, id) ? scheme.runsThrough[id] : undefined
    return [atCorner(id, `Corner ${index + 1}`, before, after, chosen)]
  })
}

function sideOf({ room, scheme, catalogue }: AnalysisInput, wall: Wall, index: number, depth: Millimetres): Side {
  const from = room.corners[index]
  const to = room.corners[(index + 1) % room.corners.length]
  const assembly = catalogue.assemblies.get(choiceFor(scheme, wall.id).assembly)
  return {
    wall,
    label: `Wall ${index + 1}`,
    lengthMm: from && to ? Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) : 0,
    isBuilt: assembly !== undefined && depth > 0,
    isResilient: assembly !== undefined && isResilient(assembly.layers),
  }
}

function atCorner(id: string, name: string, before: Side, after: Side, chosen: string | undefined): CornerAsBuilt {
  const common = { cornerId: id, walls: [before.wall.id, after.wall.id] as const, isChosen: false }
  if (before.isBuilt && after.isBuilt) return { ...common, ...butt(name, before, after, chosen) }
  const [built, bare] = before.isBuilt ? [before, after] : [after, before]
  if (!built.isBuilt) {
    const text = `${name}: nothing is built on ${before.label} or ${after.label}.`
    return { ...common, runsThrough: null, gapMm: null, text, touchesUntreated: false }
  }
  const text = `${name}: the lining of ${built.label} stops ${bothLengths(GAP_MM)} short of ${bare.label}, which is left as it is, and the gap is sealed.`
  return { ...common, runsThrough: null, gapMm: GAP_MM, text, touchesUntreated: built.isResilient }
}

function butt(name: string, before: Side, after: Side, chosen: string | undefined) {
  const isChosen = chosen === before.wall.id || chosen === after.wall.id
  const firstRuns = isChosen ? chosen === before.wall.id : before.lengthMm >= after.lengthMm - SAME_LENGTH_MM
  const [through, stops] = firstRuns ? [before, after] : [after, before]
  const text = `${name}: the lining of ${through.label} runs through; that of ${stops.label} stops ${bothLengths(GAP_MM)} short of it, and the gap is sealed.`
  return { runsThrough: through.wall.id, isChosen, gapMm: GAP_MM, text, touchesUntreated: false }
}

import type { AnalysisInput } from '#analysis/analyse.ts'
import { type DropBox, dropBoxes } from '#analysis/heights/boxes.ts'
import { facesOf, floorTakesAt } from '#analysis/heights/faces.ts'
import { planeAt } from '#analysis/heights/plane.ts'
import { ceilingAt } from '#analysis/heights/risers.ts'
import type { DoorSite } from '#analysis/openings/leaves.ts'
import { type WallFrame, wallFrames } from '#analysis/openings/wallFrame.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Opening, Wall } from '#analysis/room.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import { layersDepth } from '#assemblies/layer.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** What the openings of a room are checked against. */
export interface Surroundings {
  readonly input: AnalysisInput
  readonly result: Pick<SchemeResult, 'inset' | 'surfaces'>
  readonly boxes: readonly DropBox[]
  /** Whose face an edge of the clear room is, by the inset's number of it. */
  readonly owners: readonly string[]
  readonly floorTakesAt: (place: Point) => Millimetres
  /** A level over the datum as a height over the existing floor. */
  readonly overFloorAt: (place: Point, levelMm: Millimetres) => Millimetres
  /** Existing height from floor to ceiling. */
  readonly ceilingAt: (place: Point) => Millimetres
}

/** One opening in its wall, with its middle on the new face. */
export interface Placed {
  readonly opening: Opening
  readonly wall: Wall
  readonly frame: WallFrame
  readonly site: DoorSite
  /** Lengths along the wall that neighbours' linings cover at its two jambs. */
  readonly hiddenMm: readonly [Millimetres, Millimetres]
}

export function surroundingsOf(input: AnalysisInput, result: Surroundings['result']): Surroundings {
  const faces = facesOf(input)
  const { levels } = faces
  return {
    input,
    result,
    boxes: dropBoxes(levels, input.room.drops),
    owners: ownersOf(input, result),
    floorTakesAt: (place) => floorTakesAt(faces, place),
    overFloorAt: (place, levelMm) => levelMm - planeAt(levels.floor, place),
    ceilingAt: (place) => planeAt(ceilingAt(levels, place), place) - planeAt(levels.floor, place),
  }
}

/** "Wall 3's lining", "Wall 3" where nothing is built, or an obstacle's name. */
function ownersOf({ room }: AnalysisInput, { surfaces }: Surroundings['result']): readonly string[] {
  const depths = new Map(surfaces.map(({ id, netDepthMm }) => [id, netDepthMm]))
  return [
    ...room.walls.map(({ id }, index) => `Wall ${index + 1}${(depths.get(id) ?? 0) > 0 ? "'s lining" : ''}`),
    ...room.obstacles.flatMap(({ name, corners }) => corners.map(() => name)),
  ]
}

/** Every opening that has a wall to be in. */
export function placedOpenings({ input, result }: Surroundings): readonly Placed[] {
  const frames = wallFrames(input.room)
  const depths = new Map(result.surfaces.map(({ id, netDepthMm }) => [id, netDepthMm]))
  return input.room.openings.flatMap((opening): Placed[] => {
    const frame = frames.get(opening.wall)
    const wall = frame && input.room.walls[frame.index]
    if (!frame || !wall) return []
    const site = { faceMm: depths.get(wall.id) ?? 0, wallMm: wallThickness(input.catalogue, wall) }
    return [{ opening, wall, frame, site, hiddenMm: hiddenAt(opening, frame, result) }]
  })
}

/** From the drawn line back to the far face: the structure, and the lining where the tape touched it; 0 if unknown. */
export function wallThickness(catalogue: Catalogue, wall: Wall): Millimetres {
  const existing = catalogue.existing.get(wall.existing)
  const lining = wall.measuredTo === 'finished-face' ? (wall.lining?.thicknessMm ?? 0) : 0
  return (existing ? layersDepth(existing.layers) : 0) + lining
}

/** What the linings of neighbours and obstacles cover of an opening, from its two jambs inward. */
function hiddenAt(opening: Opening, frame: WallFrame, { inset }: Surroundings['result']): Placed['hiddenMm'] {
  const [low, high] = [Math.max(0, opening.fromMm), Math.min(frame.lengthMm, opening.fromMm + opening.widthMm)]
  const sections = inset.walls.find(({ wall }) => wall === frame.index)?.sections ?? []
  const open = sections.flatMap(({ s0Mm, s1Mm }) => {
    const [from, to] = [Math.max(low, Math.min(s0Mm, s1Mm)), Math.min(high, Math.max(s0Mm, s1Mm))]
    return to > from ? [[from, to] as const] : []
  })
  const widest = open.reduce<readonly [number, number] | null>(
    (best, stretch) => (best && best[1] - best[0] >= stretch[1] - stretch[0] ? best : stretch),
    null,
  )
  return widest ? [widest[0] - low, high - widest[1]] : [Math.max(0, high - low), 0]
}

import type { AnalysisInput } from '#analysis/analyse.ts'
import { bothLengths } from '#analysis/cautions/words.ts'
import limits from '#analysis/data/limits.json'
import { bareUnderside } from '#analysis/heights/boxes.ts'
import { facesOf, floorTakesAt, outlineOf } from '#analysis/heights/faces.ts'
import { type RoomLevels, roomLevels } from '#analysis/heights/levels.ts'
import { planeAt } from '#analysis/heights/plane.ts'
import { ceilingAt } from '#analysis/heights/risers.ts'
import type { Caution, SchemeResult } from '#analysis/results.ts'
import { choiceFor } from '#analysis/scheme.ts'
import type { Layer } from '#assemblies/layer.ts'
import type { Point } from '#geometry/polygon.ts'

/** What measured heights and levels bring up: a poor fit, no height left, drops and openings above the ceiling, a new floor on a fall. */
export function heightCautions(
  input: AnalysisInput,
  result: Pick<SchemeResult, 'heights' | 'ledger'>,
): readonly Caution[] {
  const levels = roomLevels(input.room)
  return [
    ...fitCaution(result.heights.worstMissMm),
    ...runsOutCaution(result.ledger),
    ...dropCautions(input, levels),
    ...openingCautions(input, levels),
    ...floorCautions(input, levels),
  ]
}

function fitCaution(missMm: number): readonly Caution[] {
  if (missMm <= limits.planeMissMm.value) return []
  const text = `A measured height lies ${bothLengths(missMm)} from the plane laid through them: measure again, or draw a ceiling part where the ceiling changes.`
  return [check('poor-plane-fit', text, [])]
}

/** Heights typed wrong, or a steep roof, can lay a ceiling's plane through the floor: what is below counts as no height. */
function runsOutCaution({ clearHeightMm, volumeM3 }: SchemeResult['ledger']): readonly Caution[] {
  if (clearHeightMm.lowest > 0 || volumeM3.clear <= 0) return []
  const text =
    clearHeightMm.existing > 0
      ? 'Floor and ceiling build-ups meet in part of the room, where no height is left: choose thinner ones, or draw the room up to where it ends.'
      : 'The ceiling comes down to the floor inside the room: check the measured heights, or draw the room up to where it ends.'
  return [check('height-runs-out', text, [])]
}

function dropCautions({ room }: AnalysisInput, levels: RoomLevels): readonly Caution[] {
  return room.drops.flatMap((drop) => {
    const corners = drop.corners.map(({ xMm, yMm }): Point => [xMm, yMm])
    const bareMm = bareUnderside(levels, drop)
    if (corners.some((corner) => bareMm < planeAt(ceilingAt(levels, corner), corner) - SAME_MM)) return []
    const text = `"${drop.name}" has its underside above the ceiling, so nothing hangs down: check its height or the ceiling's.`
    return [check('drop-above-ceiling', text, [])]
  })
}

/** Levels this near are the same one. */
const SAME_MM = 0.5

function openingCautions({ room }: AnalysisInput, levels: RoomLevels): readonly Caution[] {
  const outline = outlineOf(room)
  return room.openings.flatMap(({ name, wall, fromMm, widthMm, sillMm, heightMm }) => {
    const index = room.walls.findIndex(({ id }) => id === wall)
    const from = outline[index]
    const to = outline[(index + 1) % outline.length]
    if (!from || !to) return []
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    const isTooHigh = [fromMm, fromMm + widthMm].some((along) => {
      const at: Point = [from[0] + ((to[0] - from[0]) * along) / length, from[1] + ((to[1] - from[1]) * along) / length]
      const existing = planeAt(ceilingAt(levels, at), at) - planeAt(levels.floor, at)
      return sillMm + heightMm > existing + SAME_MM
    })
    if (!isTooHigh) return []
    return [check('opening-too-high', `"${name}" reaches higher than the room: check one or the other.`, [wall])]
  })
}

function floorCautions(input: AnalysisInput, levels: RoomLevels): readonly Caution[] {
  const { room, scheme, catalogue } = input
  const outline = outlineOf(room)
  const heights = outline.map((corner) => planeAt(levels.floor, corner))
  const fall = Math.max(...heights) - Math.min(...heights)
  const choice = choiceFor(scheme, room.floor.id)
  const assembly = catalogue.assemblies.get(choice.assembly)
  if (!assembly || fall <= limits.floorFallMm.value) return []
  const falls = `The floor falls ${bothLengths(fall)} across the room`
  if (choice.laidLevel) {
    const faces = facesOf(input)
    const deepest = Math.max(...outline.map((corner) => floorTakesAt(faces, corner)))
    const text = `${falls} and the new floor is laid level on its highest place: at the low side it stands ${bothLengths(deepest)} over the old floor, so settle what fills the space and its weight, and check thresholds and steps there.`
    return [check('floor-laid-level', text, [room.floor.id])]
  }
  const floats = assembly.layers.some((layer: Layer) => layer.kind === 'filler' && layer.floats === true)
  const text = floats
    ? `${falls} and the floating floor follows that fall: pads and boards are made for a level bed, so have the floor levelled first, or lay the new one level.`
    : `${falls} and the new floor follows that fall: say so to whoever sets out doors, stands and furniture, or lay it level.`
  return [check('floor-on-a-fall', text, [room.floor.id])]
}

function check(code: string, text: string, surfaces: readonly string[]): Caution {
  return { code, kind: 'check', text, surfaces }
}

import type { Opening, Room } from '#analysis/room.ts'
import { changeOpening } from '#state/commands/openings.ts'
import { type Drag, type DragSetting, HOLD } from '#ui/canvas/drags.ts'
import { openingMeasures } from '#ui/canvas/measures.ts'
import { finestStep, gridStep, snapDistance } from '#ui/canvas/snap.ts'
import { alongWall, type WallRun, wallRun } from '#ui/canvas/thingShapes.ts'
import { formatLength } from '#units/format.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Less than this no end handle makes an opening, mm: a finger must still find both ends. */
const LEAST_WIDTH = 50

/** An opening in the hand: it slides along its wall and never past its ends. */
export function openingDrag(setting: DragSetting, id: string): Drag | null {
  const found = openingOn(setting.room, id)
  if (!found) return null
  const { opening, run } = found
  const most = Math.max(0, run.length - opening.widthMm)
  const levels = slideLevels(setting.room, opening, run)
  const grabbed = alongWall(run, setting.start)
  return ({ at, free }) => {
    const wanted = opening.fromMm + alongWall(run, at) - grabbed
    const fromMm = clamp(snapped(setting, wanted, levels, free), 0, most)
    return stepTo(setting, found, fromMm, opening.widthMm)
  }
}

/** One end of an opening in the hand: its width follows, the other end stays. */
export function openingEndDrag(setting: DragSetting, id: string, end: 'from' | 'to'): Drag | null {
  const found = openingOn(setting.room, id)
  if (!found) return null
  const { opening, run } = found
  const toMm = opening.fromMm + opening.widthMm
  const levels = [0, run.length / 2, run.length, ...othersOn(setting.room, opening).flatMap(bothEnds)]
  return ({ at, free }) => {
    const place = snapped(setting, alongWall(run, at), levels, free)
    if (end === 'from') {
      const fromMm = clamp(place, 0, Math.max(0, toMm - LEAST_WIDTH))
      return stepTo(setting, found, fromMm, toMm - fromMm)
    }
    const last = clamp(place, opening.fromMm + LEAST_WIDTH, run.length)
    return stepTo(setting, found, opening.fromMm, last - opening.fromMm)
  }
}

interface OnWall {
  readonly opening: Opening
  readonly run: WallRun
}

function openingOn(room: Room, id: string): OnWall | null {
  const opening = room.openings.find((candidate) => candidate.id === id)
  const run = opening && wallRun(room, opening.wall)
  return opening && run ? { opening, run } : null
}

/** Where an opening likes to begin: at either end of its wall, about its middle, beside other openings. */
function slideLevels(room: Room, opening: Opening, run: WallRun): readonly Millimetres[] {
  const { widthMm } = opening
  const beside = othersOn(room, opening).flatMap((other) => [
    other.fromMm - widthMm,
    other.fromMm + other.widthMm,
    other.fromMm + (other.widthMm - widthMm) / 2,
  ])
  return [0, run.length - widthMm, (run.length - widthMm) / 2, ...beside]
}

function othersOn(room: Room, { id, wall }: Opening): readonly Opening[] {
  return room.openings.filter((other) => other.wall === wall && other.id !== id)
}

function bothEnds({ fromMm, widthMm }: Opening): readonly Millimetres[] {
  return [fromMm, fromMm + widthMm]
}

function snapped(
  { units, scale }: DragSetting,
  wanted: Millimetres,
  levels: readonly Millimetres[],
  free: boolean,
): Millimetres {
  const input = { tolerance: HOLD / scale, step: gridStep(units), finest: finestStep(units), free }
  return snapDistance(wanted, levels, input)
}

function stepTo(
  { room, units }: DragSetting,
  { opening, run }: OnWall,
  fromMm: Millimetres,
  widthMm: Millimetres,
): ReturnType<Drag> {
  const measures = openingMeasures(run, fromMm, widthMm)
  const [before, after] = measures.map(({ lengthMm }) => formatLength(lengthMm, units))
  const next = ((run.index + 1) % room.corners.length) + 1
  const ends = `${before} from corner ${run.index + 1}, ${after} from corner ${next}`
  return {
    command: changeOpening(room.id, opening.id, { fromMm, widthMm }),
    sentence: `${opening.name}: ${formatLength(widthMm, units)} wide, ${ends}.`,
    guides: [],
    measures,
  }
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), Math.max(least, most))
}

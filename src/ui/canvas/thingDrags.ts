import type { Point, Ring } from '#geometry/polygon.ts'
import type { Command } from '#state/command.ts'
import { changeBox } from '#state/commands/boxes.ts'
import { changeFurniture } from '#state/commands/furniture.ts'
import { moveThing, moveThingCorner } from '#state/commands/things.ts'
import type { Thing } from '#state/view.ts'
import { type Drag, type DragSetting, HOLD } from '#ui/canvas/drags.ts'
import { type Measure, polygonEdges, ringEdges, ringMeasures } from '#ui/canvas/measures.ts'
import { cornerPoints, type Handle } from '#ui/canvas/nearest.ts'
import { openingDrag, openingEndDrag } from '#ui/canvas/openingDrags.ts'
import { movedBy, type PlanRoom } from '#ui/canvas/planRoom.ts'
import { cornerLines, finestStep, gridStep, roundTo, snapPoint } from '#ui/canvas/snap.ts'
import { type Edge, snapShift } from '#ui/canvas/snapShape.ts'
import { furnitureRing, isSameThing, type Turnable, thingShape, thingsOf, turnable } from '#ui/canvas/thingShapes.ts'
import { thingLabel } from '#ui/canvas/thingWords.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** A handle turns a footprint in these steps; with Alt by single degrees. */
export const TURN_STEP = 15

/** A thing in the hand, moved as it is; null: this one does not move (a partition goes with its walls). */
export function thingDrag(setting: DragSetting, thing: Thing): Drag | null {
  if (thing.kind === 'opening') return openingDrag(setting, thing.id)
  if (thing.kind === 'underlay') return underlayDrag(setting, thing)
  const { room, units, scale, start } = setting
  const ring = pointsOf(room, thing)
  if (ring.length === 0) return null
  const walls = facesFor(setting, thing)
  const edges = [...walls, ...otherEdges(room, thing)]
  const label = thingLabel(room, thing)
  return ({ at, free }) => {
    const { shift, guides } = snapShift({
      ring,
      shift: [at[0] - start[0], at[1] - start[1]],
      edges,
      tolerance: HOLD / scale,
      step: gridStep(units),
      finest: finestStep(units),
      free,
    })
    const measures = ringMeasures(shifted(ring, shift), walls)
    return {
      command: movedBy(room, thing, shift[0], shift[1]),
      sentence: `${label}: ${distanceWords(measures, units, thing)}.`,
      guides,
      measures,
    }
  }
}

/** A handle of a thing in the hand. */
export function handleDrag(setting: DragSetting, thing: Thing, handle: Handle): Drag | null {
  if (handle.kind === 'end') return openingEndDrag(setting, thing.id, handle.end)
  const piece = turnable(setting.room, thing)
  if (handle.kind === 'turn') return piece ? turnDrag(setting, thing, piece) : null
  if (thing.kind !== 'furniture' && thing.kind !== 'box') return ringCornerDrag(setting, thing, handle.index)
  return piece ? sizeDrag(setting, thing, piece, handle.index) : null
}

function ringCornerDrag(setting: DragSetting, thing: Thing, index: number): Drag | null {
  const { room, units, scale, start } = setting
  const ring = pointsOf(room, thing)
  const corner = ring[index]
  if (!corner) return null
  const walls = ringEdges(cornerPoints(room))
  const lines = cornerLines(ring, index, [cornerPoints(room)])
  return ({ at, free }) => {
    const { point, guides } = snapPoint({
      at: [corner[0] + at[0] - start[0], corner[1] + at[1] - start[1]],
      lines,
      tolerance: HOLD / scale,
      step: gridStep(units),
      finest: finestStep(units),
      free,
    })
    const measures = ringMeasures([point], walls)
    return {
      command: moveThingCorner(room.id, thing, index, point[0], point[1]),
      sentence: `${thingLabel(room, thing)}, corner ${index + 1}: ${distanceWords(measures, units, thing)}.`,
      guides,
      measures,
    }
  }
}

/** Where and how a turned rectangle lies. */
type Lies = Partial<Pick<Turnable, 'xMm' | 'yMm' | 'widthMm' | 'depthMm' | 'angleDeg'>>

/** Lays a piece of furniture or a silencer box down anew. */
export function laid(room: PlanRoom, { kind, id }: Thing, patch: Lies): Command {
  return kind === 'box' && room.inScheme ? changeBox(room.inScheme.id, id, patch) : changeFurniture(room.id, id, patch)
}

function turnDrag({ room, start }: DragSetting, thing: Thing, piece: Turnable): Drag {
  const direction = (at: Point): number => degrees(Math.atan2(at[0] - piece.xMm, piece.yMm - at[1]))
  const grabbed = direction(start)
  return ({ at, free }) => {
    const turned = piece.angleDeg + direction(at) - grabbed
    const angleDeg = wholeTurn(roundTo(turned, free ? 1 : TURN_STEP))
    return {
      command: laid(room, thing, { angleDeg }),
      sentence: `${piece.name} turned to ${angleDeg}°.`,
      guides: [],
      measures: [],
    }
  }
}

/** Less than this no handle makes a footprint, mm. */
const LEAST_SIDE = 50

/** A corner of a footprint in the hand: the opposite one stays. */
function sizeDrag({ room, units, start }: DragSetting, thing: Thing, piece: Turnable, index: number): Drag | null {
  const ring = furnitureRing(piece)
  const corner = ring[index]
  const fixed = ring[(index + 2) % 4]
  if (!corner || !fixed) return null
  const turn = (piece.angleDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const [signX, signY] = [index === 1 || index === 2 ? 1 : -1, index >= 2 ? 1 : -1]
  return ({ at, free }) => {
    const step = free ? finestStep(units) : gridStep(units)
    const [dx, dy] = [corner[0] + at[0] - start[0] - fixed[0], corner[1] + at[1] - start[1] - fixed[1]]
    const widthMm = Math.max(LEAST_SIDE, roundTo(signX * (dx * cos + dy * sin), step))
    const depthMm = Math.max(LEAST_SIDE, roundTo(signY * (dy * cos - dx * sin), step))
    const [halfX, halfY] = [(signX * widthMm) / 2, (signY * depthMm) / 2]
    const xMm = fixed[0] + halfX * cos - halfY * sin
    const yMm = fixed[1] + halfX * sin + halfY * cos
    const size = `${formatLength(widthMm, units)} by ${formatLength(depthMm, units)}`
    return {
      command: laid(room, thing, { widthMm, depthMm, xMm, yMm }),
      sentence: `${piece.name}: ${size}.`,
      guides: [],
      measures: [],
    }
  }
}

function underlayDrag({ room, units, start }: DragSetting, thing: Thing): Drag {
  return ({ at }) => {
    const step = finestStep(units)
    const command = moveThing(room.id, thing, roundTo(at[0] - start[0], step), roundTo(at[1] - start[1], step))
    return { command, sentence: 'The picture moves.', guides: [], measures: [] }
  }
}

/** The corners of a thing, or its one place. */
function pointsOf(room: PlanRoom, thing: Thing): Ring {
  const shape = thingShape(room, thing)
  if (shape?.kind === 'place') return [shape.at]
  return shape?.kind === 'ring' ? shape.ring : []
}

/** What a thing is measured to: furniture to the finished faces, what stands there to the walls as they stand. */
function facesFor({ room, clear }: DragSetting, thing: Thing): readonly Edge[] {
  const walls = ringEdges(cornerPoints(room))
  return isOnFloor(thing) && clear.length > 0 ? polygonEdges(clear) : walls
}

function otherEdges(room: PlanRoom, thing: Thing): readonly Edge[] {
  return thingsOf(room)
    .filter((other) => !isSameThing(other, thing))
    .flatMap((other) => {
      const shape = thingShape(room, other)
      return shape?.kind === 'ring' ? ringEdges(shape.ring) : []
    })
}

function distanceWords(measures: readonly Measure[], units: LengthUnit, thing: Thing): string {
  const lengths = measures.map(({ lengthMm }) => formatLength(lengthMm, units)).join(' and ')
  return `${lengths} to the nearest ${isOnFloor(thing) ? 'finished faces' : 'walls'}`
}

/** Put into the finished room, so measured to its faces. */
function isOnFloor({ kind }: Thing): boolean {
  return kind === 'furniture' || kind === 'box'
}

function shifted(ring: Ring, [dx, dy]: Point): Ring {
  return ring.map(([x, y]): Point => [x + dx, y + dy])
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI
}

/** 0 up to 360. */
export function wholeTurn(angle: number): number {
  return ((angle % 360) + 360) % 360
}

import type { Opening } from '#analysis/room.ts'
import type { Mark, Place, Role } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import { readingAngle } from '#drawing/plan/dimension.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { flatRun } from '#drawing/plan/rings.ts'
import { onWall, type WallLine } from '#drawing/plan/wallLines.ts'
import { textBox, textMark, textWidth } from '#drawing/text.ts'
import { unreachable } from '#units/result.ts'

interface Cut {
  readonly opening: Opening
  readonly wall: WallLine
  /** Jambs along the wall, target units. */
  readonly s0: number
  readonly s1: number
  readonly selected: boolean
}

/** Doors, windows and vents, cut through outline and strip; a vehicle door stands shut behind its lining. */
export function openingMarks(context: PlanContext): Mark[] {
  return cutsOf(context).flatMap((cut) => [...reveal(context, cut), ...leaf(context, cut)])
}

function cutsOf({ room, walls, frame, isSelected }: PlanContext): Cut[] {
  const cuts: Cut[] = []
  for (const opening of room.openings) {
    const wall = walls.find(({ id }) => id === opening.wall)
    if (!wall) continue
    const s0 = Math.max(0, opening.fromMm) * frame.scale
    const s1 = Math.min(wall.lengthMm, opening.fromMm + opening.widthMm) * frame.scale
    if (s1 > s0) cuts.push({ opening, wall, s0, s1, selected: isSelected(opening.id) })
  }
  return cuts
}

function strokeOf({ style }: PlanContext, cut: Cut, width = style.fine) {
  return { colour: cut.selected ? ('accent' as const) : ('ink' as const), width }
}

function corners(wall: WallLine, s0: number, s1: number, t0: number, t1: number): Place[] {
  return [onWall(wall, s0, t0), onWall(wall, s1, t0), onWall(wall, s1, t1), onWall(wall, s0, t1)]
}

/** The way through: clear ground between the jambs, where another wall's strip does not stand in it. */
function reveal(context: PlanContext, cut: Cut): Mark[] {
  const { style } = context
  const { wall, opening } = cut
  const common = { role: 'opening' as Role, surfaceId: opening.id }
  const outer = -style.heavy * 1.05
  const shut = opening.kind === 'vehicle-door'
  const marks: Mark[] = [
    { ...common, kind: 'polygon', rings: [corners(wall, cut.s0, cut.s1, outer, 0)], fill: 'clear', stroke: null },
  ]
  const jambs: number[][] = []
  for (const [s0, s1] of shut ? [] : openStretches(context, cut)) {
    if (wall.depth > 0) {
      const rings = [corners(wall, s0, s1, -style.heavy * 0.5, wall.depth + style.medium * 0.6)]
      marks.push({ ...common, kind: 'polygon', rings, fill: 'clear', stroke: null })
    }
    jambs.push(flatRun([onWall(wall, s0, outer), onWall(wall, s0, Math.max(wall.depth, 0))]))
    jambs.push(flatRun([onWall(wall, s1, outer), onWall(wall, s1, Math.max(wall.depth, 0))]))
  }
  if (jambs.length > 0)
    marks.push({ ...common, kind: 'lines', runs: jambs, stroke: strokeOf(context, cut, style.medium) })
  return marks
}

/** The opening's stretch less what the strips of neighbouring walls cover. */
function openStretches({ result, frame }: PlanContext, { wall, s0, s1 }: Cut): [number, number][] {
  const entry = result?.inset.walls.find((item) => item.wall === wall.index)
  if (!entry || wall.depth <= 0) return [[s0, s1]]
  return entry.sections.flatMap(({ s0Mm, s1Mm }): [number, number][] => {
    const low = Math.max(s0, Math.min(s0Mm, s1Mm) * frame.scale)
    const high = Math.min(s1, Math.max(s0Mm, s1Mm) * frame.scale)
    return high > low ? [[low, high]] : []
  })
}

function leaf(context: PlanContext, cut: Cut): Mark[] {
  switch (cut.opening.kind) {
    case 'door':
      return doorLeaf(context, cut)
    case 'window':
      return panes(context, cut, 1)
    case 'vehicle-door':
      return panes(context, cut, 0)
    case 'vent':
      return louvre(context, cut)
    default:
      return unreachable(cut.opening.kind)
  }
}

/** Leaf square to the wall at its first jamb, with the quarter circle it sweeps. */
function doorLeaf(context: PlanContext, cut: Cut): Mark[] {
  const { style, placer } = context
  const { wall, s0, s1, opening } = cut
  const common = { role: 'opening' as Role, surfaceId: opening.id }
  const face = Math.max(wall.depth, 0)
  const width = s1 - s0
  const hinge = onWall(wall, s0, face)
  const tip = onWall(wall, s0, face + width)
  const clockwise = wall.along[0] * wall.inward[1] - wall.along[1] * wall.inward[0] > 0
  const start = clockwise ? wall.along : wall.inward
  const startDeg = (Math.atan2(start[1], start[0]) * 180) / Math.PI
  const swing = textlessBox([hinge, tip, onWall(wall, s1, face), onWall(wall, s1, face + width)])
  placer.take(growBox(swing, style.air * 0.5))
  const thin = Math.min(width * 0.05, style.heavy * 0.9)
  return [
    {
      ...common,
      kind: 'polygon',
      rings: [corners(wall, s0, s0 + thin, face, face + width)],
      fill: 'clear',
      stroke: strokeOf(context, cut, style.fine),
    },
    {
      ...common,
      kind: 'arc',
      x: hinge[0],
      y: hinge[1],
      radius: width,
      startDeg,
      endDeg: startDeg + 90,
      stroke: strokeOf(context, cut),
    },
    {
      ...common,
      kind: 'lines',
      runs: [flatRun([onWall(wall, s0, 0), onWall(wall, s1, 0)])],
      stroke: { ...strokeOf(context, cut, style.hair) },
    },
  ]
}

function textlessBox(places: readonly Place[]) {
  const xs = places.map(([x]) => x)
  const ys = places.map(([, y]) => y)
  const x = Math.min(...xs)
  const y = Math.min(...ys)
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }
}

/** Double line across the wall, with `middle` lines of glass between; and the sill at the new face of a window. */
function panes(context: PlanContext, cut: Cut, middle: number): Mark[] {
  const { style } = context
  const { wall, s0, s1, opening } = cut
  const common = { role: 'opening' as Role, surfaceId: opening.id }
  const outer = -style.heavy * 1.05
  const runs: number[][] = []
  for (let line = 1; line <= middle; line++) {
    const t = (outer * line) / (middle + 1)
    runs.push(flatRun([onWall(wall, s0, t), onWall(wall, s1, t)]))
  }
  if (opening.kind === 'window' && wall.depth > 0) {
    for (const [from, to] of openStretches(context, cut)) {
      runs.push(flatRun([onWall(wall, from, wall.depth), onWall(wall, to, wall.depth)]))
    }
  }
  const marks: Mark[] = [
    {
      ...common,
      kind: 'polygon',
      rings: [corners(wall, s0, s1, outer, 0)],
      fill: 'clear',
      stroke: strokeOf(context, cut),
    },
  ]
  if (runs.length > 0) marks.push({ ...common, kind: 'lines', runs, stroke: strokeOf(context, cut, style.hair) })
  return marks
}

function louvre(context: PlanContext, cut: Cut): Mark[] {
  const { style } = context
  const { wall, s0, s1, opening } = cut
  const outer = -style.heavy * 1.05
  const rings = [corners(wall, s0, s1, outer, Math.max(wall.depth, 0))]
  const runs = [
    flatRun([onWall(wall, s0, outer), onWall(wall, s1, Math.max(wall.depth, 0))]),
    flatRun([onWall(wall, s0, Math.max(wall.depth, 0)), onWall(wall, s1, outer)]),
  ]
  const common = { role: 'opening' as Role, surfaceId: opening.id }
  return [
    { ...common, kind: 'polygon', rings, fill: 'clear', stroke: strokeOf(context, cut) },
    { ...common, kind: 'lines', runs, stroke: strokeOf(context, cut, style.hair) },
  ]
}

/** Names of openings, set along the wall: outside, else inside, else beside the opening. */
export function openingLabels(context: PlanContext): Mark[] {
  const { style, placer } = context
  const marks: Mark[] = []
  for (const cut of cutsOf(context)) {
    const rotation = readingAngle(cut.wall.a, cut.wall.b)
    const candidates = labelPlaces(context, cut, rotation).map(([s, t]) => {
      const [x, y] = onWall(cut.wall, s, t)
      const box = textBox(cut.opening.name, { x, y }, style.text, 400, 'middle', rotation)
      return { x, y, boxes: [growBox(box, style.air * 0.2)] }
    })
    const found = placer.placeFirst(candidates)
    if (!found) continue
    const colour = cut.selected ? 'accent' : 'soft'
    const textStyle = { size: style.text, anchor: 'middle', rotation, colour, role: 'label' } as const
    marks.push(textMark(cut.opening.name, found.x, found.y, { ...textStyle, surfaceId: cut.opening.id }))
  }
  return marks
}

/** Middle of the baseline, along and across the wall. */
function labelPlaces({ style }: PlanContext, { wall, opening, s0, s1 }: Cut, rotation: number): [number, number][] {
  const angle = (rotation * Math.PI) / 180
  const roomIsAbove = Math.sin(angle) * wall.inward[0] - Math.cos(angle) * wall.inward[1] > 0
  const ascent = style.text * 0.75
  const descent = style.text * 0.24
  const outside = -(style.heavy + style.air + (roomIsAbove ? ascent : descent))
  const inside = Math.max(wall.depth, 0) + style.air + (roomIsAbove ? descent : ascent)
  const middle = (s0 + s1) / 2
  const width = textWidth(opening.name, style.text, 400)
  const beside = (s1 - s0) / 2 + width / 2 + style.air * 1.5
  return [
    [middle, outside],
    [middle, inside],
    [middle + beside, outside],
    [middle - beside, outside],
  ]
}

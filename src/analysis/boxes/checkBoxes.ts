import type { AnalysisInput } from '#analysis/analyse.ts'
import { type PlacedBox, stands } from '#analysis/boxes/placed.ts'
import { bothLengths, list } from '#analysis/cautions/words.ts'
import { inwardSweeps, isInClear, met, type Named, solidThings } from '#analysis/furniture/around.ts'
import { footprintOf } from '#analysis/furniture/footprint.ts'
import { leastHeightOver } from '#analysis/furniture/overhead.ts'
import { onWall, wallFrames } from '#analysis/openings/wallFrame.ts'
import type { BoxCheck, HeightPatch, Note, SchemeResult } from '#analysis/results.ts'
import type { Opening } from '#analysis/room.ts'
import type { Millimetres } from '#units/quantity.ts'

/** The room a box is put into, before any box is in it. */
export interface BoxSetting extends Pick<SchemeResult, 'clear' | 'openings' | 'inset' | 'surfaces'> {
  readonly patches: readonly HeightPatch[]
}

/** Whether every silencer box finds its place, standing or hanging; problems are full sentences, none: it does. */
export function checkBoxes(
  input: AnalysisInput,
  boxes: readonly PlacedBox[],
  setting: BoxSetting,
): readonly BoxCheck[] {
  if (boxes.length === 0) return []
  const solid = solidThings(input, setting)
  const swings = inwardSweeps(input, setting)
  const furniture = input.room.furniture.map((piece) => named(piece.name, footprintOf(piece)))
  return boxes.map((one) => {
    const standing = stands(one)
    return {
      id: one.box.id,
      name: one.box.name,
      footprint: one.footprint,
      undersideMm: standing ? null : one.box.undersideMm,
      heightMm: one.box.heightMm,
      problems: [
        ...wallProblem(one, solid, setting),
        ...(standing ? floorProblems(one, swings, furniture) : []),
        ...(standing ? openingProblems(one, input, setting) : []),
        ...boxProblem(one, boxes),
        ...ceilingProblem(one, input, setting),
      ],
    }
  })
}

function named(name: string, outline: Named['shapes'][number]['outline']): Named {
  return { name, shapes: [{ outline, holes: [] }] }
}

function verb(one: PlacedBox): string {
  return stands(one) ? 'stands' : 'hangs'
}

function wallProblem(one: PlacedBox, solid: readonly Named[], setting: BoxSetting): readonly Note[] {
  if (isInClear(one.footprint, setting)) return []
  const names = met(one.footprint, solid)
  const into = names.length > 0 ? `${verb(one)} in ${list(names)}` : 'reaches out of the clear room'
  return [{ code: 'box-in-wall', text: `${one.box.name} ${into}: move or turn it.` }]
}

function floorProblems(one: PlacedBox, swings: readonly Named[], furniture: readonly Named[]): readonly Note[] {
  return [...swingProblem(one, swings), ...furnitureProblem(one, furniture)]
}

function swingProblem({ box, footprint }: PlacedBox, swings: readonly Named[]): readonly Note[] {
  const doors = met(footprint, swings)
  if (doors.length === 0) return []
  return [{ code: 'box-in-swing', text: `${box.name} stands in the swing of ${list(doors)}: move it out of the way.` }]
}

function furnitureProblem({ box, footprint }: PlacedBox, furniture: readonly Named[]): readonly Note[] {
  const names = met(footprint, furniture)
  if (names.length === 0) return []
  return [{ code: 'box-in-furniture', text: `${box.name} stands in ${list(names)}: move one of them.` }]
}

/** Said of the later one of two only, so that each clash is told once. */
function boxProblem({ box, footprint }: PlacedBox, boxes: readonly PlacedBox[]): readonly Note[] {
  const before = boxes.slice(
    0,
    boxes.findIndex((other) => other.box === box),
  )
  const near = before.filter(({ box: other }) => topOf(other) > box.undersideMm && topOf(box) > other.undersideMm)
  const names = met(
    footprint,
    near.map((other) => named(other.box.name, other.footprint)),
  )
  if (names.length === 0) return []
  return [{ code: 'box-in-box', text: `${box.name} and ${list(names)} are in one place: move one of them.` }]
}

function topOf({ undersideMm, heightMm }: PlacedBox['box']): Millimetres {
  return undersideMm + heightMm
}

function ceilingProblem(
  { box, footprint }: PlacedBox,
  { room }: AnalysisInput,
  { patches }: BoxSetting,
): readonly Note[] {
  const lowest = new Map<string, Millimetres>()
  for (const patch of patches) {
    const over = leastHeightOver(footprint, patch)
    if (over === null || over >= topOf(box) - 0.5) continue
    const name = room.drops.find(({ id }) => id === patch.drop)?.name ?? 'The ceiling'
    lowest.set(name, Math.min(over, lowest.get(name) ?? over))
  }
  return [...lowest].map(([name, over]) => ({
    code: 'box-too-high',
    text: `${box.name} reaches up to ${bothLengths(topOf(box))} and ${name === 'The ceiling' ? 'the ceiling' : name} there is at ${bothLengths(over)}: make it lower or move it.`,
  }))
}

/** Free depth kept in front of a door or window, so that it can be reached. @source our own choice */
const BEFORE_OPENING_MM: Millimetres = 600

/** A standing box in the way to a door or window; vents left out, since a box may well belong in front of one. */
function openingProblems(one: PlacedBox, { room }: AnalysisInput, setting: BoxSetting): readonly Note[] {
  const ways = room.openings
    .filter((opening) => opening.kind !== 'vent' && isAcross(one, opening, setting))
    .flatMap((opening) => wayTo(opening, room, setting))
  const names = met(one.footprint, ways)
  if (names.length === 0) return []
  const text = `${one.box.name} stands in front of ${list(names)}, which people may have to open or leave by: keep the way to it free.`
  return [{ code: 'box-before-opening', text }]
}

/** Whether a box reaches past the sill of an opening, heights over the new floor. */
function isAcross({ box }: PlacedBox, { id, heightMm, sillMm, revealLiningMm }: Opening, setting: BoxSetting): boolean {
  const check = setting.openings.find((candidate) => candidate.id === id)
  const headMm = check ? check.clearHeightMm + revealLiningMm : sillMm + heightMm
  return topOf(box) > headMm - heightMm
}

function wayTo(opening: Opening, room: AnalysisInput['room'], { openings }: BoxSetting): readonly Named[] {
  const frame = wallFrames(room).get(opening.wall)
  if (!frame) return []
  const revealMm = openings.find(({ id }) => id === opening.id)?.revealDepthMm ?? 0
  const [s0, s1, depth] = [opening.fromMm, opening.fromMm + opening.widthMm, revealMm + BEFORE_OPENING_MM]
  return [
    named(opening.name, [
      onWall(frame, s0, 0),
      onWall(frame, s1, 0),
      onWall(frame, s1, depth),
      onWall(frame, s0, depth),
    ]),
  ]
}

import { clipSpans, type LocalRings } from '#drawing/clipSpans.ts'
import type { Mark, Place } from '#drawing/model.ts'
import { dimensionMarks } from '#drawing/plan/dimension.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { polygonRings } from '#drawing/plan/rings.ts'
import type { WallLine } from '#drawing/plan/wallLines.ts'
import { textWidth } from '#drawing/text.ts'
import type { Polygon } from '#geometry/polygon.ts'
import { formatLength } from '#units/format.ts'

/** A face square to the measured direction: where it stands, and the stretch it covers across. */
interface Face {
  readonly at: number
  readonly low: number
  readonly high: number
  /** The room lies further along the direction, not before the face. */
  readonly opensForward: boolean
}

interface Chord {
  readonly start: number
  readonly end: number
  readonly low: number
  readonly high: number
}

/** Two directions of the target, square to each other. */
interface Axes {
  readonly along: Place
  readonly across: Place
}

/** Most dimensions in one direction: a plain room has one, an L two. */
const MOST_A_DIRECTION = 2
/** The most telling distances come first; in a room of hundreds of faces the others are not looked at. */
const MOST_TRIED = 40
/** Where across its stretch a dimension is tried, as shares, once the best places are taken. */
const SHARES = Array.from({ length: 17 }, (_, step) => 0.1 + step * 0.05).sort(
  (p, q) => Math.abs(Math.abs(p - 0.5) - 0.22) - Math.abs(Math.abs(q - 0.5) - 0.22),
)
/** Best: this many text sizes off a wall, so that a tag with its words has room beside it. */
const OFF_A_WALL = { upright: 13.5, level: 6.5 }

/** Clear sizes from face to face along the longest wall and square to it, in the accent. */
export function clearDimensions(context: PlanContext): Mark[] {
  const { walls, result } = context
  if (result === null || result.clear.length === 0) return []
  const longest = walls.reduce<WallLine | null>(
    (best, wall) => (best && best.length >= wall.length ? best : wall),
    null,
  )
  if (longest === null) return []
  const level: Place = longest.along[0] < -1e-9 ? [-longest.along[0], -longest.along[1]] : longest.along
  const upright: Place = [-level[1], level[0]]
  // Upright first: level labels leave upright lines less choice than the other way round.
  return [
    ...chordMarks(context, { along: upright, across: level }),
    ...chordMarks(context, { along: level, across: upright }),
  ]
}

function chordMarks(context: PlanContext, axes: Axes): Mark[] {
  const clear = context.result?.clear ?? []
  const onAxes = (polygons: readonly Polygon[]): LocalRings =>
    polygons.flatMap((polygon) =>
      polygonRings(context.frame, polygon).map((ring) =>
        ring.map((place): [number, number] => [dot(place, axes.along), dot(place, axes.across)]),
      ),
    )
  const rings = onAxes(clear)
  const walls = onAxes(clear.map((polygon) => ({ ...polygon, holes: [] })))
  const marks: Mark[] = []
  let drawn = 0
  for (const chord of chordsOf(facesOf(walls, axes)).slice(0, MOST_TRIED)) {
    if (drawn === MOST_A_DIRECTION) break
    const added = placeChord(context, chord, rings, axes)
    if (added === null) continue
    marks.push(...added)
    drawn++
  }
  return marks
}

function dot(a: Place, b: Place): number {
  return a[0] * b[0] + a[1] * b[1]
}

function facesOf(rings: LocalRings, axes: Axes): Face[] {
  const turn = axes.along[0] * axes.across[1] - axes.along[1] * axes.across[0]
  const faces: Face[] = []
  for (const ring of rings) {
    ring.forEach(([along1, across1], index) => {
      const [along2, across2] = ring[(index + 1) % ring.length]!
      const run = across2 - across1
      if (Math.abs(along2 - along1) > 0.005 * Math.abs(run)) return
      faces.push({
        at: (along1 + along2) / 2,
        low: Math.min(across1, across2),
        high: Math.max(across1, across2),
        opensForward: run * turn > 0,
      })
    })
  }
  return faces
}

/** Pairs of faces that look at each other, the most telling first, each distance once. */
function chordsOf(faces: readonly Face[]): Chord[] {
  const chords: Chord[] = []
  for (const start of faces.filter(({ opensForward }) => opensForward)) {
    for (const end of faces) {
      const low = Math.max(start.low, end.low)
      const high = Math.min(start.high, end.high)
      if (!end.opensForward && end.at > start.at && high > low) chords.push({ start: start.at, end: end.at, low, high })
    }
  }
  const size = ({ start, end, low, high }: Chord): number => (high - low) * (end - start)
  chords.sort((p, q) => size(q) - size(p))
  const told: number[] = []
  return chords.filter(({ start, end }) => {
    const length = end - start
    if (told.some((other) => Math.abs(other - length) < 1e-6)) return false
    told.push(length)
    return true
  })
}

function placeChord(context: PlanContext, chord: Chord, rings: LocalRings, { along, across }: Axes): Mark[] | null {
  const { style, units, placer, frame } = context
  const text = `${formatLength((chord.end - chord.start) / frame.scale, units)} clear`
  // Without room for its number a dimension is left out: asked before its line is looked at.
  if (textWidth(text, style.text, 400) + style.tick > chord.end - chord.start) return null
  for (const at of placesAcross(
    chord,
    style.text * (Math.abs(along[0]) > 0.7 ? OFF_A_WALL.level : OFF_A_WALL.upright),
  )) {
    const open = clipSpans(rings, 0, at, 1, 0).some(
      ([from, to]) => Math.abs(from - chord.start) < 0.5 && Math.abs(to - chord.end) < 0.5,
    )
    if (!open) continue
    const place = (distance: number): Place => [
      along[0] * distance + across[0] * at,
      along[1] * distance + across[1] * at,
    ]
    const from = place(chord.start)
    const to = place(chord.end)
    if (!placer.isFreeLine(from, to, style.tick * 1.5)) continue
    // Beyond the walls it would read as one of the outside dimensions.
    const dimension = { from, to, text, colour: 'accent', role: 'clear-dimension', style, beyond: 'neither' } as const
    const marks = dimensionMarks(dimension, placer)
    if (marks) return marks
  }
  return null
}

function placesAcross({ low, high }: Chord, off: number): number[] {
  const best = off < (high - low) * 0.45 ? [high - off, low + off] : []
  return [...best, ...SHARES.map((share) => low + (high - low) * share)]
}

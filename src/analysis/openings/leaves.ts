import { bothLengths } from '#analysis/cautions/words.ts'
import doors from '#analysis/data/doors.json'
import { onWall, type WallFrame } from '#analysis/openings/wallFrame.ts'
import type { Hinge, Opening, Swing } from '#analysis/room.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Thickness of a door leaf where nobody has measured it. @source data/doors.json */
export const LEAF_MM: Millimetres = doors.leafThicknessMm.value

/** The wall round a door, measured into the room from the line that was drawn. */
export interface DoorSite {
  /** Where the new face stands; negative: it moved outward. */
  readonly faceMm: Millimetres
  /** From the drawn line back to the existing wall's far face. */
  readonly wallMm: Millimetres
}

/** One leaf on its butt hinge, before anything but its own reveal stops it. */
export interface HungLeaf {
  readonly door: 'first' | 'lobby'
  readonly hungIn: 'existing' | 'lining'
  readonly swing: Swing
  readonly jamb: Hinge
  /** Words for sentences: "its leaf". */
  readonly name: string
  readonly hangs: string
  /** The pin. */
  readonly hinge: Point
  readonly widthMm: Millimetres
  /** Unit directions: the shut leaf from its pin, and where it swings to. */
  readonly shut: Point
  readonly towards: Point
  /** Degrees at which its own reveal stops it; 180: none does. */
  readonly revealStopDeg: number
}

/**
 * The leaves of a door. The pin of a butt hinge stands at the jamb, on the face the leaf swings from.
 * A leaf in the existing wall is flush with the face it swings from; one that swings in has the reveal before it, whose
 * jambs may be lined. A leaf in the new lining hangs between lined jambs, flush with the room's face.
 */
export function leavesOf(opening: Opening, frame: WallFrame, site: DoorSite): readonly HungLeaf[] {
  const first = doorLeaves(opening, frame, site, {
    door: 'first',
    hungIn: opening.hungIn,
    hinge: opening.hinge,
    swing: opening.swing,
  })
  if (opening.lobby === null) return first
  return [...first, ...doorLeaves(opening, frame, site, { door: 'lobby', hungIn: 'lining', ...opening.lobby })]
}

interface Door {
  readonly door: HungLeaf['door']
  readonly hungIn: HungLeaf['hungIn']
  readonly hinge: Hinge
  readonly swing: Swing
}

function doorLeaves(opening: Opening, frame: WallFrame, site: DoorSite, door: Door): HungLeaf[] {
  const jambs: readonly Hinge[] = opening.leaves === 'two' ? ['from', 'to'] : [door.hinge]
  const inset = door.hungIn === 'lining' ? opening.revealLiningMm : 0
  const widthMm = Math.max(0, opening.widthMm - 2 * inset) / jambs.length
  const t = pinAt(site, door)
  const into = door.swing === 'in' ? 1 : -1
  return jambs.map((jamb) => {
    const forward = jamb === 'from' ? 1 : -1
    const s = jamb === 'from' ? opening.fromMm + inset : opening.fromMm + opening.widthMm - inset
    return {
      door: door.door,
      hungIn: door.hungIn,
      swing: door.swing,
      jamb,
      name: leafName(door, jambs.length, jamb),
      hangs: hangsWords(opening, site, door),
      hinge: onWall(frame, s, t),
      widthMm,
      shut: [frame.along[0] * forward, frame.along[1] * forward],
      towards: [frame.inward[0] * into, frame.inward[1] * into],
      revealStopDeg: revealStop(opening, site, door),
    }
  })
}

/** How far into the room the pin stands. */
function pinAt({ faceMm, wallMm }: DoorSite, { hungIn, swing }: Door): Millimetres {
  if (hungIn === 'lining') return swing === 'in' ? faceMm : faceMm - LEAF_MM
  return swing === 'in' ? 0 : -wallMm
}

/**
 * Degrees at which the reveal stops a leaf. A bare jamb in line with the pin stops it square to the wall; a jamb that is
 * lined by r over a depth d stops it at atan(d / r), where it meets the lined edge at the room's face.
 */
function revealStop({ revealLiningMm }: Opening, { faceMm }: DoorSite, { hungIn, swing }: Door): number {
  if (hungIn === 'lining') return swing === 'in' ? 180 : 90
  if (swing === 'out' || faceMm <= 0) return 180
  return (Math.atan2(faceMm, revealLiningMm) * 180) / Math.PI
}

function leafName({ door }: Door, count: number, jamb: Hinge): string {
  const which = door === 'lobby' ? 'the leaf of its second door' : 'its leaf'
  if (count === 1) return which
  return `${which} at the jamb nearer the wall's ${jamb === 'from' ? 'first' : 'second'} corner`
}

function hangsWords(opening: Opening, site: DoorSite, door: Door): string {
  const { faceMm } = site
  if (door.hungIn === 'existing') {
    if (door.swing === 'out') return 'in the existing wall, at its far face, opening out of the room'
    if (faceMm <= 0) return "in the existing wall, at the room's face, opening into the room"
    return `in the existing wall, ${bothLengths(faceMm)} behind the new face, opening into the room through the reveal`
  }
  const place = faceMm > 0 ? 'in the new lining' : 'in the existing wall (there is no new lining)'
  const way = door.swing === 'in' ? 'opening into the room' : 'opening out of the room through the reveal'
  const between = door.door === 'lobby' ? `, ${bothLengths(spaceBetween(opening, site))} from the first door` : ''
  return `${place}, at the room's face, ${way}${between}`
}

/** Depth of the space between the two shut doors of a lobby, mm. */
export function spaceBetween({ hungIn, swing }: Opening, { faceMm, wallMm }: DoorSite): Millimetres {
  if (hungIn === 'lining') return 0
  const firstFace = swing === 'in' ? 0 : LEAF_MM - wallMm
  return Math.max(0, faceMm - LEAF_MM - firstFace)
}

/** Plan of the leaf at an angle from shut: its leading face from the pin, its thickness behind. */
export function leafAt({ hinge, widthMm, shut, towards }: HungLeaf, degrees: number): Point[] {
  const [cos, sin] = cosSin(degrees)
  const along: Point = [shut[0] * cos + towards[0] * sin, shut[1] * cos + towards[1] * sin]
  const back: Point = [shut[0] * sin - towards[0] * cos, shut[1] * sin - towards[1] * cos]
  const place = (s: Millimetres, t: Millimetres): Point => [
    hinge[0] + along[0] * s + back[0] * t,
    hinge[1] + along[1] * s + back[1] * t,
  ]
  return [place(0, 0), place(widthMm, 0), place(widthMm, LEAF_MM), place(0, LEAF_MM)]
}

/** A step of the arc, degrees: 0.14 % of the radius off the circle. */
const ARC_STEP = 6

/** Plan of what a leaf passes over from shut to an angle of at most 180 degrees: the pin, then the arc. */
export function sweepTo({ hinge, widthMm, shut, towards }: HungLeaf, degrees: number): Point[] {
  const steps = Math.max(1, Math.ceil(degrees / ARC_STEP))
  const arc = Array.from({ length: steps + 1 }, (_, step): Point => {
    const [cos, sin] = cosSin((degrees * step) / steps)
    return [
      hinge[0] + widthMm * (shut[0] * cos + towards[0] * sin),
      hinge[1] + widthMm * (shut[1] * cos + towards[1] * sin),
    ]
  })
  return [hinge, ...arc]
}

/** Exact at right angles. */
function cosSin(degrees: number): readonly [number, number] {
  if (degrees === 90) return [0, 1]
  if (degrees === 180) return [-1, 0]
  const angle = (degrees * Math.PI) / 180
  return [Math.cos(angle), Math.sin(angle)]
}

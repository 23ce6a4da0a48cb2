import links from '#acoustics/data/links.json' with { type: 'json' }
import { bendingAt, type LeafModel } from '#acoustics/layered/leaf.ts'
import { lineImpedance } from '#acoustics/layered/lineImpedance.ts'
import type { Tone } from '#acoustics/layered/tone.ts'

/** Solid material that ties the two leaves of a cavity, SI units. */
export type ConnectionModel = LineConnection | PointConnection

interface ConnectionBase {
  /** Acts as a spring beside the air, smeared over the area. */
  readonly isSpring: boolean
  /** Share of its power that also travels as free bending waves, incoherent with the air path; 0: none. */
  readonly share: number
  /** The spring already carries waves longer than twice the spacing; false where it is no spring (plates). */
  readonly isMasked: boolean
}

export interface LineConnection extends ConnectionBase {
  readonly kind: 'line'
  /** m between lines */
  readonly spacing: number
  /** m2/N, of a metre of line; 0 = rigid */
  readonly compliance: number
  /** m between the lines that hold each leaf still; 0: held by none */
  readonly spanFar: number
  readonly spanRoom: number
}

export interface PointConnection extends ConnectionBase {
  readonly kind: 'point'
  /** m2 per point */
  readonly area: number
  /** N/m per point */
  readonly stiffness: number
  readonly loss: number
}

/** Copied once: reading it through the module in the inner loops is measurable. */
const LINE_LOSS = links.lineLoss.value
const END = new Float64Array(2)
/** 1/8 of the point impedance of an infinite thin plate is 1 / sqrt(B m). @source Cremer and Heckl, memory */
const POINT_IMPEDANCE = 8

/** Adds 1 / z of one end of a line to out[0], out[1]. */
function addEnd(leaf: LeafModel, span: number, spacing: number, tone: Tone, out: Float64Array): void {
  lineImpedance(leaf, span, spacing, tone, END)
  const norm = END[0]! * END[0]! + END[1]! * END[1]!
  out[0]! += END[0]! / norm
  out[1]! -= END[1]! / norm
}

function lineSpring(line: LineConnection, far: LeafModel, room: LeafModel, tone: Tone, out: Float64Array): void {
  // j w C b / (1 + 0.1 j) = w C b (0.1 + j) / 1.01
  const give = (tone.omega * line.compliance * line.spacing) / (1 + LINE_LOSS * LINE_LOSS)
  out[0] = give * LINE_LOSS
  out[1] = give
  addEnd(far, line.spanFar, line.spacing, tone, out)
  addEnd(room, line.spanRoom, line.spacing, tone, out)
  invert(out)
}

function invert(out: Float64Array): void {
  const re = out[0]!
  const im = out[1]!
  const norm = re * re + im * im
  out[0] = re / norm
  out[1] = -im / norm
}

function pointSpring(point: PointConnection, far: LeafModel, room: LeafModel, tone: Tone, out: Float64Array): void {
  const { loss } = point
  const give = tone.omega / (point.stiffness * (1 + loss * loss))
  const plates =
    1 / (POINT_IMPEDANCE * Math.sqrt(bendingAt(far, tone) * far.mass)) +
    1 / (POINT_IMPEDANCE * Math.sqrt(bendingAt(room, tone) * room.mass))
  out[0] = (give * loss + plates) * point.area
  out[1] = give * point.area
  invert(out)
}

/**
 * Pressure per difference of velocity between the two leaves, Pa s/m, into out[0] (re) and out[1] (im).
 * @source line: Davy's line bridge with finite compliance as in Vigran, Building Acoustics (2008), p. 295 (seen), static
 *   term own; point: spring between two plate point impedances, own arrangement
 */
export function connectionSpring(
  connection: ConnectionModel,
  far: LeafModel,
  room: LeafModel,
  tone: Tone,
  out: Float64Array,
): void {
  if (connection.kind === 'line') lineSpring(connection, far, room, tone, out)
  else pointSpring(connection, far, room, tone, out)
}

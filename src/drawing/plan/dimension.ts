import type { Mark, Place, Role } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { growBox, type Placer } from '#drawing/place.ts'
import type { PlanStyle } from '#drawing/style.ts'
import { textMark, textWidth } from '#drawing/text.ts'

export interface DimensionInput {
  /** Ends of the dimension line. */
  readonly from: Place
  readonly to: Place
  /** Where the extension lines start, if there are any. */
  readonly measured?: readonly [Place, Place] | undefined
  readonly text: string
  readonly colour: ColourToken
  readonly role: Role
  readonly surfaceId?: string | undefined
  readonly style: PlanStyle
  /** Where a text too long for its line may stand: beyond an end, under it, nowhere; absent: beyond either end. */
  readonly beyond?: 'start' | 'end' | 'neither' | 'under' | undefined
}

/** Angle of a line as text is set along it, so that it reads from below or from the right; degrees, (-90, 90]. */
export function readingAngle(from: Place, to: Place): number {
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
  const turned = angle > 89.9 ? angle - 180 : angle <= -90.1 ? angle + 180 : angle
  return Math.abs(turned) < 1e-9 ? 0 : turned
}

/**
 * A dimension in drafting manner: line with 45 degree ticks, extension lines, text above it. A text too long for its
 * line stands beyond one end. Where it finds no room at all the dimension is left out whole: never a line without its
 * number.
 */
export function dimensionMarks(input: DimensionInput, placer: Placer): Mark[] | null {
  const { from, to, style, role, surfaceId } = input
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (!(length > 2 * style.tick)) return null
  const label = placeText(input, length, placer)
  if (label === undefined) return null
  const over = style.tick * 0.7
  const start = Math.min(-over, label.low)
  const end = Math.max(length + over, label.high)
  const runs = [[...along(input, length, start), ...along(input, length, end)]]
  input.measured?.forEach((measured, index) => {
    const extension = extensionLine(measured, index === 0 ? from : to, style)
    if (extension) runs.push(extension)
  })
  for (const run of runs) placer.takeLine(run[0]!, run[1]!, run[2]!, run[3]!)
  const thin = { colour: input.colour, width: style.fine }
  const ticks = [from, to].map((place) => tick(place, readingAngle(from, to), style.tick))
  return [
    { kind: 'lines', role, surfaceId, runs, stroke: thin },
    { kind: 'lines', role, surfaceId, runs: ticks, stroke: { colour: input.colour, width: style.medium * 1.3 } },
    label.mark,
  ]
}

/** Place at a distance from the start of a dimension line. */
function along({ from, to }: DimensionInput, length: number, distance: number): Place {
  const share = distance / length
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]
}

/** The text where it is free, and the stretch of the line under it. */
function placeText(input: DimensionInput, length: number, placer: Placer) {
  const { from, to, style, text, role, surfaceId } = input
  const rotation = readingAngle(from, to)
  const half = textWidth(text, style.text, 400) / 2
  const angle = (rotation * Math.PI) / 180
  const up = 0.42 * style.text
  const colour = input.colour === 'soft' ? 'ink' : input.colour
  const under = input.beyond === 'under' && 2 * half + style.tick > length
  const lift = under ? -1.2 * style.text : up
  const candidates = textCentres(half, length, style.tick, input.beyond).map((centre) => {
    const [x, y] = along(input, length, centre)
    const textStyle = { size: style.text, anchor: 'middle', rotation, colour, role, surfaceId } as const
    const mark = textMark(text, x + Math.sin(angle) * lift, y - Math.cos(angle) * lift, textStyle)
    const reach = under ? 0 : half
    return { mark, low: centre - reach, high: centre + reach, boxes: [growBox(mark.box, style.air * 0.5)] }
  })
  return placer.placeFirst(candidates)
}

/** Distances from the start at which the middle of the text is tried. */
function textCentres(half: number, length: number, tickSize: number, beyond: DimensionInput['beyond']): number[] {
  if (2 * half + tickSize > length) {
    const ends = { start: -half - 2 * tickSize, end: length + half + 2 * tickSize }
    if (beyond === undefined) return [ends.end, ends.start]
    if (beyond === 'under') return [length / 2]
    return beyond === 'neither' ? [] : [ends[beyond]]
  }
  const shares = [0.5, 0.43, 0.57, 0.36, 0.64, 0.29, 0.71, 0.22, 0.78]
  return shares
    .map((share) => share * length)
    .filter((at) => Math.min(at, length - at) >= half + tickSize / 2 || at === length / 2)
}

/** From a little off the measured corner to a little past the dimension line. */
function extensionLine(start: Place, end: Place, style: PlanStyle): number[] | null {
  const length = Math.hypot(end[0] - start[0], end[1] - start[1])
  const gap = style.tick * 1.2
  if (length <= gap + style.tick) return null
  const x = (end[0] - start[0]) / length
  const y = (end[1] - start[1]) / length
  const over = style.tick * 0.7
  return [start[0] + x * gap, start[1] + y * gap, end[0] + x * over, end[1] + y * over]
}

function tick(at: Place, angleDeg: number, size: number): number[] {
  const angle = ((angleDeg - 45) * Math.PI) / 180
  const x = Math.cos(angle) * size * 1.2
  const y = Math.sin(angle) * size * 1.2
  return [at[0] - x, at[1] - y, at[0] + x, at[1] + y]
}

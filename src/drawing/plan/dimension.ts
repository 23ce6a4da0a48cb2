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
}

/** Angle of a line as text is set along it, so that it reads from below or from the right; degrees, (-90, 90]. */
export function readingAngle(from: Place, to: Place): number {
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
  const turned = angle > 89.9 ? angle - 180 : angle <= -90.1 ? angle + 180 : angle
  return Math.abs(turned) < 1e-9 ? 0 : turned
}

/**
 * A dimension in drafting manner: line with 45 degree ticks, extension lines, text above it. Where the text finds no
 * room the dimension is left out whole: never a line without its number.
 */
export function dimensionMarks(input: DimensionInput, placer: Placer): Mark[] | null {
  const { from, to, style, role, surfaceId } = input
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (!(length > 2 * style.tick)) return null
  const label = placeText(input, length, placer)
  if (label === null) return null
  const along: Place = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const over = style.tick * 0.7
  const runs = [
    [from[0] - along[0] * over, from[1] - along[1] * over, to[0] + along[0] * over, to[1] + along[1] * over],
  ]
  input.measured?.forEach((start, end) => {
    const extension = extensionLine(start, end === 0 ? from : to, style)
    if (extension) runs.push(extension)
  })
  for (const run of runs) placer.takeLine(run[0]!, run[1]!, run[2]!, run[3]!)
  const thin = { colour: input.colour, width: style.fine }
  const ticks = [from, to].map((end) => tick(end, readingAngle(from, to), style.tick))
  return [
    { kind: 'lines', role, surfaceId, runs, stroke: thin },
    { kind: 'lines', role, surfaceId, runs: ticks, stroke: { colour: input.colour, width: style.medium * 1.3 } },
    label,
  ]
}

function placeText(input: DimensionInput, length: number, placer: Placer) {
  const { from, to, style, text, role, surfaceId } = input
  const rotation = readingAngle(from, to)
  const width = textWidth(text, style.text, 400)
  const angle = (rotation * Math.PI) / 180
  const lift: Place = [Math.sin(angle), -Math.cos(angle)]
  const fits = width + 2 * style.tick < length
  const shares = fits ? [0.5, 0.36, 0.64, 0.24, 0.76] : [0.5]
  const lifts = fits ? [0.42] : [1.45]
  const candidates = lifts.flatMap((up) =>
    shares
      .filter((share) => !fits || Math.min(share, 1 - share) * length > width / 2 + style.tick)
      .map((share) => {
        const x = from[0] + (to[0] - from[0]) * share + lift[0] * up * style.text
        const y = from[1] + (to[1] - from[1]) * share + lift[1] * up * style.text
        const colour = input.colour === 'soft' ? 'ink' : input.colour
        const mark = textMark(text, x, y, { size: style.text, anchor: 'middle', rotation, colour, role, surfaceId })
        return { mark, boxes: [growBox(mark.box, style.air * 0.25)] }
      }),
  )
  return placer.placeFirst(candidates)?.mark ?? null
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

import type { CircleMark, Mark, Place, Stroke, TextMark } from '#drawing/model.ts'
import type { Palette } from '#drawing/palette.ts'
import { FONT_FAMILY } from '#drawing/text.ts'
import { unreachable } from '#units/result.ts'

/** The part of a canvas's drawing interface used here; konva's own wrapper offers it too. */
type Pen = CanvasRenderingContext2D

/** Paints a drawing's marks in order; one path a mark, so that a hatch costs one stroke. */
export function paintMarks(pen: Pen, marks: readonly Mark[], palette: Palette): void {
  pen.save()
  pen.lineJoin = 'miter'
  pen.lineCap = 'butt'
  pen.textBaseline = 'alphabetic'
  pen.fontKerning = 'none'
  for (const mark of marks) paintMark(pen, mark, palette)
  pen.restore()
}

function paintMark(pen: Pen, mark: Mark, palette: Palette): void {
  switch (mark.kind) {
    case 'polygon':
      pen.beginPath()
      for (const ring of mark.rings) addRing(pen, ring)
      fill(pen, mark.fill && palette[mark.fill], 'evenodd')
      stroke(pen, mark.stroke, palette)
      return
    case 'lines':
      pen.beginPath()
      for (const run of mark.runs) addRun(pen, run)
      stroke(pen, mark.stroke, palette)
      return
    case 'circle':
      paintCircle(pen, mark, palette)
      return
    case 'arc':
      pen.beginPath()
      pen.arc(mark.x, mark.y, mark.radius, radians(mark.startDeg), radians(mark.endDeg))
      stroke(pen, mark.stroke, palette)
      return
    case 'text':
      paintText(pen, mark, palette)
      return
    default:
      unreachable(mark)
  }
}

function paintCircle(pen: Pen, mark: CircleMark, palette: Palette): void {
  pen.beginPath()
  pen.arc(mark.x, mark.y, mark.radius, 0, 2 * Math.PI)
  fill(pen, mark.fill && palette[mark.fill], 'nonzero')
  stroke(pen, mark.stroke, palette)
}

function paintText(pen: Pen, mark: TextMark, palette: Palette): void {
  pen.font = `${mark.weight} ${mark.size}px "${FONT_FAMILY}", sans-serif`
  pen.textAlign = mark.anchor === 'middle' ? 'center' : mark.anchor
  pen.fillStyle = palette[mark.colour]
  if (mark.rotation === 0) {
    pen.fillText(mark.text, mark.x, mark.y)
    return
  }
  pen.save()
  pen.translate(mark.x, mark.y)
  pen.rotate(radians(mark.rotation))
  pen.fillText(mark.text, 0, 0)
  pen.restore()
}

function addRing(pen: Pen, ring: readonly Place[]): void {
  ring.forEach(([x, y], index) => {
    if (index === 0) pen.moveTo(x, y)
    else pen.lineTo(x, y)
  })
  pen.closePath()
}

function addRun(pen: Pen, run: readonly number[]): void {
  for (let index = 0; index + 1 < run.length; index += 2) {
    const x = run[index] ?? 0
    const y = run[index + 1] ?? 0
    if (index === 0) pen.moveTo(x, y)
    else pen.lineTo(x, y)
  }
}

function fill(pen: Pen, colour: string | null, rule: CanvasFillRule): void {
  if (colour === null) return
  pen.fillStyle = colour
  pen.fill(rule)
}

function stroke(pen: Pen, line: Stroke | null, palette: Palette): void {
  if (line === null) return
  pen.strokeStyle = palette[line.colour]
  pen.lineWidth = line.width
  pen.setLineDash(line.dash ? [...line.dash] : [])
  pen.stroke()
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180
}

import type { Drawing } from '#drawing/model.ts'
import { drawingToSvg } from '#drawing/svg.ts'
import { fail, ok, type Result } from '#units/result.ts'

const MM_PER_INCH = 25.4
/** The page's own unit: 1/96 in. */
const PIXELS_PER_INCH = 96

/** Hands a file to the reader's download folder. */
export function saveBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}

export function saveText(name: string, text: string, type: string): void {
  saveBlob(name, new Blob([text], { type }))
}

/** Size of a drawing in picture points. */
export function pixelSize(drawing: Pick<Drawing, 'widthMm' | 'heightMm'>, times: number) {
  const perMm = (PIXELS_PER_INCH / MM_PER_INCH) * times
  return { width: Math.round(drawing.widthMm * perMm), height: Math.round(drawing.heightMm * perMm) }
}

/**
 * The sheet as a picture, `times` points per 1/96 in, on white.
 * @returns the picture, or a sentence saying why there is none
 */
export async function drawingToPng(drawing: Drawing, times: number): Promise<Result<Blob, string>> {
  const { width, height } = pixelSize(drawing, times)
  const address = URL.createObjectURL(new Blob([drawingToSvg(drawing)], { type: 'image/svg+xml' }))
  try {
    const image = new Image(width, height)
    image.src = address
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = width
    canvas.height = height
    const context = canvas.getContext('2d')
    if (!context) return fail(tooLarge(width, height))
    context.fillStyle = '#ffffff'
    context.fillRect(0, 0, width, height)
    context.drawImage(image, 0, 0, width, height)
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'))
    return blob ? ok(blob) : fail(tooLarge(width, height))
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : String(cause)
    return fail(`The picture could not be drawn (${reason}); save the SVG instead.`)
  } finally {
    URL.revokeObjectURL(address)
  }
}

function tooLarge(width: number, height: number): string {
  return `This browser cannot draw a picture of ${width} x ${height} points; take the smaller size or the SVG.`
}

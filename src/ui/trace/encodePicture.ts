import { LARGEST_PX } from '#project/limits.ts'
import type { Picture, Sha256 } from '#project/pictures.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A picture ready to be kept. */
export interface EncodedPicture extends Picture {
  readonly widthPx: number
  readonly heightPx: number
}

/** What a browser offers its pictures to be kept at. @source our own choice: no loss to be seen in lines at arm's length */
const JPEG_QUALITY = 0.85

/** Width and height brought down so that neither side is longer than is kept. */
export function withinLargest(widthPx: number, heightPx: number): readonly [number, number] {
  const scale = Math.min(1, LARGEST_PX / Math.max(widthPx, heightPx))
  return [Math.max(1, Math.round(widthPx * scale)), Math.max(1, Math.round(heightPx * scale))]
}

/** A sheet of white paper to paint a picture on; see-through parts would hide dark lines on dark paper. */
export function whiteCanvas(widthPx: number, heightPx: number): Result<HTMLCanvasElement, string> {
  const canvas = document.createElement('canvas')
  canvas.width = widthPx
  canvas.height = heightPx
  const pen = canvas.getContext('2d')
  if (!pen) return fail('the browser has no memory left for it; close other pages and try again')
  pen.fillStyle = '#ffffff'
  pen.fillRect(0, 0, widthPx, heightPx)
  return ok(canvas)
}

/** Paints a decoded picture, no larger than is kept. */
export function paintWithin(image: ImageBitmap): Result<HTMLCanvasElement, string> {
  const [width, height] = withinLargest(image.width, image.height)
  const canvas = whiteCanvas(width, height)
  if (!canvas.ok) return canvas
  const pen = canvas.value.getContext('2d')
  if (!pen) return fail('the browser has no memory left for it; close other pages and try again')
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(image, 0, 0, width, height)
  return canvas
}

/** The canvas as PNG or JPEG, whichever is smaller: lines come out as the one, photos as the other. */
export async function encodeCanvas(canvas: HTMLCanvasElement, sha256: Sha256): Promise<Result<EncodedPicture, string>> {
  const [png, jpeg] = [await blobOf(canvas, 'image/png'), await blobOf(canvas, 'image/jpeg')]
  const smaller = png && jpeg ? (png.size <= jpeg.size ? png : jpeg) : (png ?? jpeg)
  if (!smaller) return fail('the browser could not write it down; try a smaller picture')
  const bytes = new Uint8Array(await smaller.arrayBuffer())
  return ok({
    sha256: await sha256(bytes),
    mime: smaller === png ? 'image/png' : 'image/jpeg',
    bytes,
    widthPx: canvas.width,
    heightPx: canvas.height,
  })
}

function blobOf(canvas: HTMLCanvasElement, type: string): Promise<Blob | null> {
  return new Promise((resolve) => canvas.toBlob(resolve, type, JPEG_QUALITY))
}

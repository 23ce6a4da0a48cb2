import { isPdf, pictureHead } from '#project/pictureHead.ts'
import { paintWithin } from '#ui/trace/encodePicture.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** What a file turned out to be. */
export type TraceFile = 'picture' | 'pdf' | 'neither'

/** Enough of a file to see what it is. */
const HEAD_BYTES = 2048
/** More than this is read into memory by no page that stays quick. @source our own choice */
const LARGEST_FILE_BYTES = 200_000_000
/** More pixels than this take more memory than a tablet has, at 4 bytes each. @source our own choice */
const MOST_PIXELS = 150_000_000

export async function traceFileKind(file: File): Promise<TraceFile> {
  const bytes = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer())
  if (isPdf(bytes)) return 'pdf'
  const startsAsPicture = (bytes[0] === 0x89 && bytes[1] === 0x50) || (bytes[0] === 0xff && bytes[1] === 0xd8)
  return startsAsPicture ? 'picture' : 'neither'
}

/** Why a file is not even looked into; null: it may be. */
export function tooLarge(file: File): string | null {
  if (file.size === 0) return 'it is empty'
  if (file.size <= LARGEST_FILE_BYTES) return null
  return `it is ${Math.round(file.size / 1e6)} MB large, and more than ${LARGEST_FILE_BYTES / 1e6} MB is not read; save it smaller`
}

/** A decoded photo or scan on a canvas, upright as its camera held it, and how many pixels it had. */
export interface ReadPicture {
  readonly canvas: HTMLCanvasElement
  readonly fullWidthPx: number
  readonly fullHeightPx: number
}

/** Decodes a PNG or JPEG, no larger than is kept. @returns or why not, to follow "was not loaded: " */
export async function readPicture(file: File): Promise<Result<ReadPicture, string>> {
  const head = pictureHead(new Uint8Array(await file.arrayBuffer()))
  if (head === null) return fail('it ends before it says how large it is; save it again from where it came')
  const { widthPx, heightPx } = head
  if (widthPx * heightPx > MOST_PIXELS) {
    return fail(
      `it is ${widthPx} by ${heightPx} pixels, and more than ${MOST_PIXELS / 1e6} million are not read; save it smaller`,
    )
  }
  const image = await decoded(file)
  if (!image.ok) return image
  const canvas = paintWithin(image.value)
  const [fullWidthPx, fullHeightPx] = [image.value.width, image.value.height]
  image.value.close()
  return canvas.ok ? ok({ canvas: canvas.value, fullWidthPx, fullHeightPx }) : canvas
}

async function decoded(file: File): Promise<Result<ImageBitmap, string>> {
  try {
    return ok(await createImageBitmap(file, { imageOrientation: 'from-image' }))
  } catch {
    return fail('it is damaged or broken off, and cannot be decoded; save it again from where it came')
  }
}

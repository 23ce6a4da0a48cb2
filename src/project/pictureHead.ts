import type { Underlay } from '#project/project.ts'

/** What the first bytes of a picture say of it, before anything is decoded. */
export interface PictureHead {
  readonly mime: Underlay['mime']
  /** As stored; a photo may be turned when it is shown. */
  readonly widthPx: number
  readonly heightPx: number
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
const PDF = [0x25, 0x50, 0x44, 0x46, 0x2d]
/** A PDF may have other bytes before its first line. @source ISO 32000-1, annex H.3.4.1 (1024 bytes), memory */
const PDF_WITHIN = 1024

/** Kind and size of a PNG or JPEG; null: it is neither, or ends before it says so. */
export function pictureHead(bytes: Uint8Array): PictureHead | null {
  if (startsWith(bytes, PNG, 0)) return pngHead(bytes)
  return bytes[0] === 0xff && bytes[1] === 0xd8 ? jpegHead(bytes) : null
}

/** Whether these are the bytes of a PDF. */
export function isPdf(bytes: Uint8Array): boolean {
  const last = Math.min(PDF_WITHIN, bytes.length - PDF.length)
  for (let at = 0; at <= last; at += 1) if (startsWith(bytes, PDF, at)) return true
  return false
}

function startsWith(bytes: Uint8Array, start: readonly number[], at: number): boolean {
  return start.every((byte, index) => bytes[at + index] === byte)
}

/** @source PNG specification, third edition, 5.2 and 11.2.2 (IHDR comes first), memory */
function pngHead(bytes: Uint8Array): PictureHead | null {
  if (bytes.length < 24) return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  return sized('image/png', view.getUint32(16), view.getUint32(20))
}

/** Walks the segments to the start of the frame. @source ITU-T T.81, annex B, memory */
function jpegHead(bytes: Uint8Array): PictureHead | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let at = 2
  while (at + 9 < bytes.length) {
    if (bytes[at] !== 0xff) return null
    const marker = bytes[at + 1] ?? 0
    if (marker === 0xff) at += 1
    else if (isFrame(marker)) return sized('image/jpeg', view.getUint16(at + 7), view.getUint16(at + 5))
    else at += 2 + view.getUint16(at + 2)
  }
  return null
}

/** SOF0 to SOF15, without the tables that stand between them. */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
}

function sized(mime: PictureHead['mime'], widthPx: number, heightPx: number): PictureHead | null {
  return widthPx > 0 && heightPx > 0 ? { mime, widthPx, heightPx } : null
}

import type { PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { LARGEST_PX } from '#project/limits.ts'
import { whiteCanvas } from '#ui/trace/encodePicture.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A scan is rarely finer. @source common practice, no source */
const DOTS_PER_INCH = 300
/** A PDF counts in points. @source ISO 32000-1, 8.3.2.3, memory */
const POINTS_PER_INCH = 72

/** How many pages a PDF has. @returns or why it cannot be read, to follow "was not loaded: " */
export function countPages(file: File): Promise<Result<number, string>> {
  return withPdf(file, async (pdf) => ok(pdf.numPages))
}

/** One page of a PDF, painted on white at 300 dots to the inch, or as large as a picture is kept. */
export function paintPage(
  file: File,
  page: number,
  largestPx = LARGEST_PX,
): Promise<Result<HTMLCanvasElement, string>> {
  return withPdf(file, async (pdf) => {
    const proxy = await pdf.getPage(page)
    const plain = proxy.getViewport({ scale: 1 })
    const longest = Math.max(plain.width, plain.height)
    if (!(longest > 0)) return fail(`page ${page} has no size`)
    const scale = Math.min(largestPx / longest, DOTS_PER_INCH / POINTS_PER_INCH)
    const viewport = proxy.getViewport({ scale })
    const canvas = whiteCanvas(Math.max(1, Math.round(viewport.width)), Math.max(1, Math.round(viewport.height)))
    if (!canvas.ok) return canvas
    await proxy.render({ canvas: canvas.value, viewport, background: '#ffffff' }).promise
    return canvas
  })
}

/** Opens a PDF, does the work, and gives its memory back. The reader is fetched only now; offline it is on this machine. */
async function withPdf<Value>(
  file: File,
  work: (pdf: PDFDocumentProxy) => Promise<Result<Value, string>>,
): Promise<Result<Value, string>> {
  try {
    const { openPdf } = await import('#ui/trace/pdfReader.ts')
    const { pdf, close } = await openPdf(new Uint8Array(await file.arrayBuffer()))
    try {
      return pdf.numPages < 1 ? fail('it has no page; load another PDF') : await work(pdf)
    } finally {
      await close()
    }
  } catch (cause) {
    return fail(whyNot(cause))
  }
}

function whyNot(cause: unknown): string {
  const name = cause instanceof Error ? cause.name : ''
  if (name === 'PasswordException') return 'it is protected by a password; save a copy without one and load that'
  if (name === 'InvalidPDFException') return 'it is damaged or broken off and no PDF that can be read; save it again'
  const reason = cause instanceof Error ? cause.message : String(cause)
  if (/page/i.test(reason)) return `it has no page that can be read (${reason.replace(/\.$/, '')}); load another PDF`
  return `the PDF could not be read (${reason.replace(/\.$/, '')}); save the page as a picture and load that`
}

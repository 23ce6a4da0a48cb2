import type { Page } from 'playwright-core'
import type { Drawing, TextMark } from '#drawing/model.ts'

export interface InkReport {
  readonly width: number
  readonly height: number
  /** Labels with nothing dark inside their box. */
  readonly blank: readonly string[]
}

/** Looks into an exported picture, in the browser: is there ink inside every label's box? */
export async function inkInLabels(page: Page, png: Buffer, drawing: Drawing): Promise<InkReport> {
  const labels = drawing.marks
    .filter((mark): mark is TextMark => mark.kind === 'text')
    .map(({ text, box }) => ({ text, x: box.x, y: box.y, width: box.width, height: box.height }))
  return page.evaluate(
    async ({ base64, labels, widthMm }) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
      const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }))
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height)
      const context = canvas.getContext('2d', { willReadFrequently: true })
      if (!context) throw new Error('no canvas')
      context.drawImage(bitmap, 0, 0)
      const scale = bitmap.width / widthMm
      const hasInk = ({ x, y, width, height }: (typeof labels)[number]) => {
        const size = [Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale))] as const
        const { data } = context.getImageData(Math.round(x * scale), Math.round(y * scale), ...size)
        for (let i = 0; i < data.length; i += 4) {
          if ((data[i] ?? 255) + (data[i + 1] ?? 255) + (data[i + 2] ?? 255) < 450) return true
        }
        return false
      }
      const blank = labels.filter((label) => !hasInk(label)).map((label) => label.text)
      return { width: bitmap.width, height: bitmap.height, blank }
    },
    { base64: png.toString('base64'), labels, widthMm: drawing.widthMm },
  )
}

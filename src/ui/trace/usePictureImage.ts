import { useEffect, useState } from 'react'
import type { Picture } from '#project/pictures.ts'
import type { PictureStore } from '#state/pictures.ts'
import { useShell } from '#ui/shell.ts'

export type PictureImage =
  | { readonly kind: 'loading' }
  | { readonly kind: 'missing' }
  | { readonly kind: 'ready'; readonly image: HTMLCanvasElement }

const LOADING: PictureImage = { kind: 'loading' }
const MISSING: PictureImage = { kind: 'missing' }

/**
 * A picture of this machine, decoded to be painted; loaded again where it comes in later.
 * @param isDark  a drawing on white paper is turned over, so that its lines stay legible among light ones
 */
export function usePictureImage(sha256: string, isDark: boolean): PictureImage {
  const { pictures } = useShell()
  const [found, setFound] = useState<{ readonly of: string; readonly image: PictureImage } | null>(null)
  const of = `${sha256} ${isDark}`
  useEffect(() => {
    let isGone = false
    const look = async () => {
      const image = await loadImage(pictures, sha256, isDark)
      if (!isGone) setFound({ of: `${sha256} ${isDark}`, image })
    }
    void look()
    const stop = pictures.follow(() => void look())
    return () => {
      isGone = true
      stop()
    }
  }, [pictures, sha256, isDark])
  return found?.of === of ? found.image : LOADING
}

/** Whether a picture is on this machine; null: not known yet. */
export function useHasPicture(sha256: string): boolean | null {
  const { pictures } = useShell()
  const [found, setFound] = useState<{ readonly of: string; readonly has: boolean } | null>(null)
  useEffect(() => {
    let isGone = false
    const look = async () => {
      const has = (await pictures.find(sha256)) !== null
      if (!isGone) setFound({ of: sha256, has })
    }
    void look()
    const stop = pictures.follow(() => void look())
    return () => {
      isGone = true
      stop()
    }
  }, [pictures, sha256])
  return found?.of === sha256 ? found.has : null
}

async function loadImage(pictures: PictureStore, sha256: string, isDark: boolean): Promise<PictureImage> {
  const picture = await pictures.find(sha256)
  if (picture === null) return MISSING
  try {
    const image = await painted(picture)
    if (isDark && isOnWhitePaper(image)) turnOver(image)
    return { kind: 'ready', image }
  } catch {
    return MISSING
  }
}

async function painted({ bytes, mime }: Picture): Promise<HTMLCanvasElement> {
  const bitmap = await createImageBitmap(new Blob([bytes], { type: mime }))
  const canvas = document.createElement('canvas')
  canvas.width = bitmap.width
  canvas.height = bitmap.height
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0)
  bitmap.close()
  return canvas
}

/** Lighter than this on average, of 255: lines on paper, not a photo. @source our own choice */
const WHITE_PAPER = 190
const SAMPLE_PX = 24

function isOnWhitePaper(image: HTMLCanvasElement): boolean {
  const small = document.createElement('canvas')
  small.width = SAMPLE_PX
  small.height = SAMPLE_PX
  const pen = small.getContext('2d')
  if (!pen) return false
  pen.drawImage(image, 0, 0, SAMPLE_PX, SAMPLE_PX)
  const { data } = pen.getImageData(0, 0, SAMPLE_PX, SAMPLE_PX)
  return data.reduce((sum, value, index) => sum + (index % 4 === 3 ? 0 : value), 0) / (3 * SAMPLE_PX ** 2) > WHITE_PAPER
}

/** Light for dark. */
function turnOver(image: HTMLCanvasElement): void {
  const pen = image.getContext('2d')
  if (!pen) return
  pen.globalCompositeOperation = 'difference'
  pen.fillStyle = '#ffffff'
  pen.fillRect(0, 0, image.width, image.height)
}

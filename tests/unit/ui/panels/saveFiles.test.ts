import { expect, test } from 'vitest'
import { pixelSize } from '#ui/panels/sheet/saveFiles.ts'

test('a picture has 2 or 4 points for every 1/96 in of paper', () => {
  const letter = { widthMm: 279.4, heightMm: 215.9 }
  expect(pixelSize(letter, 2)).toEqual({ width: 2112, height: 1632 })
  expect(pixelSize(letter, 4)).toEqual({ width: 4224, height: 3264 })
})

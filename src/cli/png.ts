import { fileURLToPath } from 'node:url'
import { Resvg } from '@resvg/resvg-js'
import { missingCharacters } from '#drawing/text.ts'

/** The built command line and its sources both stand two folders below the project. */
const FONTS = ['OpenSans-Regular.ttf', 'OpenSans-SemiBold.ttf'].map((name) =>
  fileURLToPath(new URL(`../../src/assets/${name}`, import.meta.url)),
)

/**
 * A drawing's SVG as a PNG on white.
 * @param pixelsPerCssPixel  2 for "2x": 2 pixels per 1/96 in
 * @param widthMm  width of the paper
 */
export function svgToPng(svg: string, widthMm: number, pixelsPerCssPixel: number): Uint8Array {
  const width = Math.round((widthMm / 25.4) * 96 * pixelsPerCssPixel)
  const image = new Resvg(svg, {
    background: '#ffffff',
    fitTo: { mode: 'width', value: width },
    font: { fontFiles: FONTS, loadSystemFonts: needsOtherFonts(svg), defaultFontFamily: 'Open Sans' },
  })
  return image.render().asPng()
}

/** True where a name or note is written in letters the bundled font lacks; only then does the machine's own font matter. */
function needsOtherFonts(svg: string): boolean {
  const words = svg.replace(/<style[\s\S]*?<\/style>/g, '').replace(/<[^>]+>/g, '')
  return missingCharacters(words.replace(/\s/g, ' ')).length > 0
}

import fontData from '#drawing/data/fontData.json' with { type: 'json' }
import type { Drawing, Mark, Stroke, TextMark } from '#drawing/model.ts'
import { PALETTES, type Palette, type PaletteName } from '#drawing/palette.ts'
import { FONT_FAMILY } from '#drawing/text.ts'
import { unreachable } from '#units/result.ts'

/** A drawing as a self-contained SVG file: user unit 1 mm of paper, font embedded, the same bytes on any machine. */
export function drawingToSvg(drawing: Drawing, paletteName: PaletteName = 'print'): string {
  const palette = PALETTES[paletteName]
  const width = number(drawing.widthMm)
  const height = number(drawing.heightMm)
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escapeText(drawing.title)}</title>`,
    `<style>${fontFaces()}text{font-kerning:none;font-variant-ligatures:none}</style>`,
    `<rect width="${width}" height="${height}" fill="${palette.sheet}"/>`,
    `<g font-family="'${FONT_FAMILY}', sans-serif">`,
    ...drawing.marks.map((mark) => markSvg(mark, palette)),
    '</g>',
    '</svg>',
    '',
  ].join('\n')
}

function fontFaces(): string {
  return Object.entries(fontData.woff2)
    .map(
      ([weight, base64]) =>
        `@font-face{font-family:"${FONT_FAMILY}";font-weight:${weight};src:url(data:font/woff2;base64,${base64}) format("woff2")}`,
    )
    .join('')
}

/** One mark as one SVG element. */
export function markSvg(mark: Mark, palette: Palette): string {
  switch (mark.kind) {
    case 'polygon': {
      const path = mark.rings.map((ring) => `${pathOf(ring.flat())}Z`).join('')
      return `<path d="${path}" fill-rule="evenodd"${paint(mark.fill && palette[mark.fill], mark.stroke, palette)}/>`
    }
    case 'lines':
      return `<path d="${mark.runs.map(pathOf).join('')}"${paint(null, mark.stroke, palette)}/>`
    case 'circle': {
      const place = `cx="${number(mark.x)}" cy="${number(mark.y)}" r="${number(mark.radius)}"`
      return `<circle ${place}${paint(mark.fill && palette[mark.fill], mark.stroke, palette)}/>`
    }
    case 'arc': {
      const [x1, y1] = onCircle(mark.x, mark.y, mark.radius, mark.startDeg)
      const [x2, y2] = onCircle(mark.x, mark.y, mark.radius, mark.endDeg)
      const radius = number(mark.radius)
      const large = mark.endDeg - mark.startDeg > 180 ? 1 : 0
      const path = `M${number(x1)} ${number(y1)}A${radius} ${radius} 0 ${large} 1 ${number(x2)} ${number(y2)}`
      return `<path d="${path}"${paint(null, mark.stroke, palette)}/>`
    }
    case 'text':
      return textSvg(mark, palette)
    default:
      return unreachable(mark)
  }
}

function textSvg(mark: TextMark, palette: Palette): string {
  const x = number(mark.x)
  const y = number(mark.y)
  const turn = mark.rotation === 0 ? '' : ` transform="rotate(${number(mark.rotation)} ${x} ${y})"`
  const weight = mark.weight === 400 ? '' : ` font-weight="${mark.weight}"`
  const anchor = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`
  const size = `font-size="${number(mark.size)}"`
  return `<text x="${x}" y="${y}" ${size}${weight}${anchor}${turn} fill="${palette[mark.colour]}">${escapeText(mark.text)}</text>`
}

function paint(fill: string | null, stroke: Stroke | null, palette: Palette): string {
  const ground = ` fill="${fill ?? 'none'}"`
  if (stroke === null) return ground
  const dash = stroke.dash ? ` stroke-dasharray="${stroke.dash.map(number).join(' ')}"` : ''
  return `${ground} stroke="${palette[stroke.colour]}" stroke-width="${number(stroke.width)}"${dash}`
}

function pathOf(run: readonly number[]): string {
  let path = ''
  for (let index = 0; index + 1 < run.length; index += 2) {
    path += `${index === 0 ? 'M' : 'L'}${number(run[index]!)} ${number(run[index + 1]!)}`
  }
  return path
}

function onCircle(x: number, y: number, radius: number, degrees: number): [number, number] {
  const angle = (degrees * Math.PI) / 180
  return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]
}

/** Rounded to a thousandth, without negative zero. */
function number(value: number): string {
  const rounded = Math.round(value * 1000) / 1000
  return String(rounded === 0 ? 0 : rounded)
}

/** Text as XML character data; control characters, which XML cannot hold, are dropped. */
export function escapeText(text: string): string {
  return [...text]
    .filter((character) => character >= ' ' && character !== '\ufffe' && character !== '\uffff')
    .join('')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
}

import font from '#drawing/data/font.json' with { type: 'json' }
import type { Anchor, Box, Role, TextMark, Weight } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'

/** Family name to give a renderer; the files stand in src/assets. */
export const FONT_FAMILY: string = font.family

interface FontFacts {
  readonly unitsPerEm: number
  readonly descent: number
  readonly capHeight: number
  readonly xHeight: number
  readonly widths: Readonly<Record<string, number>>
}

const FACTS: Readonly<Record<Weight, FontFacts>> = { 400: font.weights['400'], 600: font.weights['600'] }

/** Height of capitals and digits over the font size. */
export const CAP_HEIGHT = FACTS[400].capHeight / FACTS[400].unitsPerEm
/** Depth of g and comma below the baseline over the font size. */
export const DESCENT = 0.24
/** Ascender of accented capitals is above this; captions keep that far apart. */
export const LINE_HEIGHT = 1.35

/** Width of a line of text, in the unit of `size`; kerning and ligatures are off everywhere. */
export function textWidth(text: string, size: number, weight: Weight): number {
  const facts = FACTS[weight]
  const fallback = facts.unitsPerEm / 2
  let units = 0
  for (const character of text) units += facts.widths[character] ?? fallback
  return (units * size) / facts.unitsPerEm
}

/** Characters of a text that the bundled font cannot show; empty for everything Leafgap writes itself. */
export function missingCharacters(text: string): string[] {
  return [...new Set(text)].filter((character) => FACTS[400].widths[character] === undefined)
}

/** What a line of text covers: upright box round the turned line, capital height to descender. */
export function textBox(
  text: string,
  at: { x: number; y: number },
  size: number,
  weight: Weight,
  anchor: Anchor,
  rotation: number,
): Box {
  const width = textWidth(text, size, weight)
  const left = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width
  const top = -CAP_HEIGHT * size
  const bottom = DESCENT * size
  if (rotation === 0) return { x: at.x + left, y: at.y + top, width, height: bottom - top }
  const angle = (rotation * Math.PI) / 180
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  const xs: number[] = []
  const ys: number[] = []
  for (const dx of [left, left + width]) {
    for (const dy of [top, bottom]) {
      xs.push(at.x + dx * cos - dy * sin)
      ys.push(at.y + dx * sin + dy * cos)
    }
  }
  const x = Math.min(...xs)
  const y = Math.min(...ys)
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }
}

export interface TextStyle {
  readonly size: number
  readonly weight?: Weight | undefined
  readonly anchor?: Anchor | undefined
  readonly rotation?: number | undefined
  readonly colour?: ColourToken | undefined
  readonly role: Role
  readonly surfaceId?: string | undefined
}

/** A text mark with its box; upright, regular, ink and left-aligned unless said otherwise. */
export function textMark(text: string, x: number, y: number, style: TextStyle): TextMark {
  const { size, weight = 400, anchor = 'start', rotation = 0, colour = 'ink', role, surfaceId } = style
  const box = textBox(text, { x, y }, size, weight, anchor, rotation)
  return { kind: 'text', text, x, y, size, weight, anchor, rotation, colour, role, surfaceId, box }
}

/** A number's leading hyphen as the minus sign it stands for. */
export function minusSign(text: string): string {
  return text.replace(/^-/, '−')
}

/** Breaks a text into lines no wider than `width`; a word that is wider is broken where it meets the edge. */
export function wrapText(text: string, width: number, size: number, weight: Weight): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of words(text).flatMap((whole) => breakWord(whole, width, size, weight))) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line !== '' && textWidth(longer, size, weight) > width) {
      lines.push(line)
      line = word
    } else {
      line = longer
    }
  }
  if (line !== '') lines.push(line)
  return lines
}

/** Pieces of a word that fit a line, each of one character at least. */
function breakWord(word: string, width: number, size: number, weight: Weight): string[] {
  if (textWidth(word, size, weight) <= width) return [word]
  const pieces: string[] = []
  let piece = ''
  for (const character of word) {
    if (piece !== '' && textWidth(piece + character, size, weight) > width) {
      pieces.push(piece)
      piece = ''
    }
    piece += character
  }
  return [...pieces, piece]
}

/** Units that stay on the line of their number. */
const UNITS = /^(mm|cm|m|in|ft|ft²|m²|ft³|m³|Hz|dB|dBA|kg|kg\/m²|lb|lb\/ft²|L\/s|%)[.,;:)]?$/

function words(text: string): string[] {
  const joined: string[] = []
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const last = joined.length - 1
    if (UNITS.test(word) && /\d$/.test(joined[last] ?? '')) joined[last] += ` ${word}`
    else joined.push(word)
  }
  return joined
}

/** Shortens a text with an ellipsis until it fits `width`. */
export function fitText(text: string, width: number, size: number, weight: Weight): string {
  if (textWidth(text, size, weight) <= width) return text
  const characters = [...text]
  while (characters.length > 1 && textWidth(`${characters.join('')}…`, size, weight) > width) characters.pop()
  return `${characters.join('').trimEnd()}…`
}

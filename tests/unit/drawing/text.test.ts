import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Weight } from '#drawing/model.ts'
import { FONT_FAMILY, fitText, missingCharacters, textBox, textMark, textWidth, wrapText } from '#drawing/text.ts'
import { fontFacts, readTrueType } from '../../support/drawingFont.ts'

const FILES: readonly (readonly [Weight, string])[] = [
  [400, 'OpenSans-Regular'],
  [600, 'OpenSans-SemiBold'],
]

describe('the bundled font', () => {
  it.each(FILES)('is measured as the file of weight %i sets it', (weight, name) => {
    const tables = readTrueType(readFileSync(new URL(`../../../src/assets/${name}.ttf`, import.meta.url)))
    const facts = fontFacts(tables)
    for (const [character, units] of Object.entries(facts.widths)) {
      expect(textWidth(character, facts.unitsPerEm, weight), character).toBeCloseTo(units, 9)
    }
  })

  it.each(FILES)('has tabular figures in weight %i', (weight) => {
    const widths = new Set([...'0123456789'].map((digit) => textWidth(digit, 1000, weight)))
    expect(widths.size).toBe(1)
  })

  it('is called by the family name in both files, so that one name finds both weights', () => {
    for (const [, name] of FILES) {
      const file = readFileSync(new URL(`../../../src/assets/${name}.ttf`, import.meta.url))
      const names = readTrueType(file).get('name')!
      const entries = Array.from({ length: names.readUInt16BE(2) }, (_, index) => 6 + 12 * index)
      const family = entries.find((entry) => names.readUInt16BE(entry + 6) === 1)!
      const start = names.readUInt16BE(4) + names.readUInt16BE(family + 10)
      const text = Buffer.from(names.subarray(start, start + names.readUInt16BE(family + 8))).swap16()
      expect(text.toString('utf16le')).toBe(FONT_FAMILY)
    }
  })

  it('has every character that Leafgap writes', () => {
    const ascii = Array.from({ length: 95 }, (_, index) => String.fromCharCode(32 + index)).join('')
    expect(missingCharacters(`${ascii}′″²³·–—−×°%Ø/"'…½¼¾±`)).toEqual([])
  })

  it('tells which characters it cannot show', () => {
    expect(missingCharacters('Зал 2 → ≥')).toEqual(['З', 'а', 'л', '→', '≥'])
  })
})

describe('a line of text', () => {
  it('is as wide as the sum of its characters', () => {
    const text = `11'-6 1/4"`
    const sum = [...text].reduce((total, character) => total + textWidth(character, 13, 400), 0)
    expect(textWidth(text, 13, 400)).toBeCloseTo(sum, 9)
  })

  it('covers a box on the side its anchor says', () => {
    const at = { x: 100, y: 50 }
    const width = textWidth('STC 62', 10, 400)
    expect(textBox('STC 62', at, 10, 400, 'start', 0).x).toBe(100)
    expect(textBox('STC 62', at, 10, 400, 'middle', 0).x).toBeCloseTo(100 - width / 2, 9)
    expect(textBox('STC 62', at, 10, 400, 'end', 0).x).toBeCloseTo(100 - width, 9)
  })

  it('stands upright beside its place when turned by a quarter', () => {
    const box = textBox('STC 62', { x: 100, y: 50 }, 10, 400, 'middle', -90)
    expect(box.height).toBeCloseTo(textWidth('STC 62', 10, 400), 9)
    expect(box.x).toBeLessThan(100)
    expect(box.y + box.height / 2).toBeCloseTo(50, 9)
  })

  it('carries its box as a mark', () => {
    const mark = textMark('Wall 1', 3, 4, { size: 2.5, role: 'label' })
    expect(mark.box).toEqual(textBox('Wall 1', { x: 3, y: 4 }, 2.5, 400, 'start', 0))
  })
})

describe('wrapping and shortening', () => {
  const text = 'Structure-borne sound and bass below 50 Hz are not in this figure.'

  it('keeps every word, in order, within the width', () => {
    const lines = wrapText(text, 40, 2.5, 400)
    expect(lines.join(' ')).toBe(text)
    for (const line of lines) expect(textWidth(line, 2.5, 400)).toBeLessThanOrEqual(40)
  })

  it('keeps a unit on the line of its number at any width', () => {
    for (let width = 10; width < 120; width++) {
      for (const line of wrapText(text, width, 2.5, 400)) expect(line).not.toMatch(/50$/)
    }
  })

  it('shortens to the width with an ellipsis', () => {
    const short = fitText('A very long project name indeed', 20, 5, 600)
    expect(short.endsWith('…')).toBe(true)
    expect(textWidth(short, 5, 600)).toBeLessThanOrEqual(20)
    expect(fitText('Short', 100, 5, 600)).toBe('Short')
  })
})

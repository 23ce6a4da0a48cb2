import { describe, expect, it } from 'vitest'
import type { Drawing, Mark } from '#drawing/model.ts'
import { PALETTES } from '#drawing/palette.ts'
import { drawingToSvg, escapeText, markSvg } from '#drawing/svg.ts'
import { textMark } from '#drawing/text.ts'

const marks: Mark[] = [
  {
    kind: 'polygon',
    role: 'strip',
    rings: [
      [
        [0, 0],
        [10, 0],
        [10, 10 / 3],
      ],
    ],
    fill: 'strip',
    stroke: { colour: 'ink', width: 0.3, dash: [1, 0.5] },
  },
  {
    kind: 'lines',
    role: 'hatch',
    runs: [
      [0, 0, 1, 1, 2, 0],
      [5, 5, 6, 6],
    ],
    stroke: { colour: 'hatch', width: 0.1 },
  },
  { kind: 'circle', role: 'tag', x: 5, y: 5, radius: 2, fill: null, stroke: null },
  {
    kind: 'arc',
    role: 'opening',
    x: 0,
    y: 0,
    radius: 10,
    startDeg: 0,
    endDeg: 90,
    stroke: { colour: 'ink', width: 0.1 },
  },
  textMark(`<R&D> 11'-6 1/4"`, 10, 10, { size: 2.5, role: 'label', rotation: -90, weight: 600, anchor: 'middle' }),
]
const drawing: Drawing = { title: 'A & B', widthMm: 279.4, heightMm: 215.9, marks }

describe('drawingToSvg', () => {
  const svg = drawingToSvg(drawing)

  it('is in millimetres of paper', () => {
    expect(svg).toContain('width="279.4mm" height="215.9mm" viewBox="0 0 279.4 215.9"')
  })

  it('carries both weights of the font', () => {
    expect(svg.match(/@font-face/g)).toHaveLength(2)
    expect(svg.match(/url\(data:font\/woff2;base64,[A-Za-z0-9+/=]{10000,}\)/g)).toHaveLength(2)
  })

  it('escapes every text', () => {
    expect(svg).toContain('<title>A &amp; B</title>')
    expect(svg).toContain("&lt;R&amp;D&gt; 11'-6 1/4&quot;")
  })

  it('closes every element it opens', () => {
    const open: string[] = []
    for (const [, slash, name, selfClosed] of svg.matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g)) {
      if (slash) expect(open.pop()).toBe(name)
      else if (!selfClosed) open.push(name!)
    }
    expect(open).toEqual([])
  })

  it('is the same to the byte each time, with coordinates to a thousandth', () => {
    expect(drawingToSvg(structuredClone(drawing))).toBe(svg)
    expect(svg).toContain('M0 0L10 0L10 3.333Z')
    expect(svg).not.toMatch(/\d\.\d{4,}/)
    expect(svg).not.toMatch(/NaN|Infinity|undefined|[ "]-0[ "]/)
  })

  it('draws an arc clockwise from its start to its end', () => {
    expect(markSvg(marks[3]!, PALETTES.print)).toContain('M10 0A10 10 0 0 1 0 10')
  })

  it('leaves out control characters, which no XML may hold', () => {
    expect(escapeText('a\u0000b\u001fc\td')).toBe('abcd')
  })
})

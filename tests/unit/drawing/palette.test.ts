import { describe, expect, it } from 'vitest'
import { type ColourToken, PALETTES, type PaletteName } from '#drawing/palette.ts'

/** Relative luminance. @source WCAG 2.2, definition of relative luminance, memory */
function luminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  }) as [number, number, number]
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

function contrast(first: string, second: string): number {
  const [high, low] = [luminance(first), luminance(second)].sort((a, b) => b - a) as [number, number]
  return (high + 0.05) / (low + 0.05)
}

const GROUNDS: readonly ColourToken[] = ['paper', 'sheet', 'clear', 'strip']
const names = Object.keys(PALETTES) as PaletteName[]

describe.each(names)('the %s palette', (name) => {
  const palette = PALETTES[name]

  it.each(['ink', 'soft', 'accent', 'warn'] as const)('sets %s text at 4.5:1 on every ground', (token) => {
    for (const ground of GROUNDS) expect(contrast(palette[token], palette[ground]), ground).toBeGreaterThanOrEqual(4.5)
  })

  it('sets text on the accent and on its tint at 4.5:1', () => {
    expect(contrast(palette['on-accent'], palette.accent)).toBeGreaterThanOrEqual(4.5)
    expect(contrast(palette.ink, palette['accent-soft'])).toBeGreaterThanOrEqual(4.5)
    expect(contrast(palette.accent, palette['accent-soft'])).toBeGreaterThanOrEqual(4.5)
  })

  it.each(['hatch', 'wall'] as const)('draws %s marks at 3:1 on every ground', (token) => {
    for (const ground of GROUNDS) expect(contrast(palette[token], palette[ground]), ground).toBeGreaterThanOrEqual(3)
  })

  it('draws the outline of a solid column at 3:1', () => {
    expect(contrast(palette.wall, palette.solid)).toBeGreaterThanOrEqual(3)
  })
})

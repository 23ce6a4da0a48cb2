import { describe, expect, it } from 'vitest'
import { inOpening, made, soundOf } from '../../support/openings.ts'

/**
 * Harris (ed.), Handbook of Acoustical Measurements and Noise Control, 3rd ed. (1995 Spanish ed.), Table 31.6, seen in a
 * public repository's table retyped. The gap of worn seals is fitted to rows 1 to 6, so these hold the fit; the pairs are not.
 */
const LEAVES = [
  { row: '31.6-1', type: 'door-hollow-core', seal: 'worn', stc: 17 },
  { row: '31.6-2', type: 'door-hollow-core', seal: 'good', stc: 20 },
  { row: '31.6-3', type: 'door-solid-core', seal: 'worn', stc: 20 },
  { row: '31.6-4', type: 'door-solid-core', seal: 'good', stc: 28 },
  { row: '31.6-5', type: 'door-metal-hollow', seal: 'worn', stc: 20 },
  { row: '31.6-6', type: 'door-metal-hollow', seal: 'good', stc: 30 },
] as const

const PAIRS = [
  { row: '31.6-7', type: 'pair-hollow-core', gapMm: 100, seal: 'worn', stc: 22 },
  { row: '31.6-8', type: 'pair-hollow-core', gapMm: 100, seal: 'good', stc: 26 },
  { row: '31.6-9', type: 'pair-solid-core-70', gapMm: 70, seal: 'worn', stc: 28 },
  { row: '31.6-10', type: 'pair-solid-core-70', gapMm: 70, seal: 'good', stc: 40 },
  { row: '31.6-11', type: 'pair-solid-core', gapMm: 70, seal: 'worn', stc: 40 },
  { row: '31.6-12', type: 'pair-solid-core', gapMm: 70, seal: 'good', stc: 44 },
  { row: '31.6-13', type: 'pair-solid-core', gapMm: 230, seal: 'worn', stc: 42 },
  { row: '31.6-14', type: 'pair-solid-core', gapMm: 230, seal: 'good', stc: 50 },
] as const

describe('doors in print, sealed and unsealed', () => {
  it.each(LEAVES)('row $row: $type with $seal seals is $stc within 2', ({ type, seal, stc }) => {
    expect(Math.abs(soundOf(made(type, seal), inOpening('door')).stc! - stc)).toBeLessThanOrEqual(2)
  })

  // Not fitted. Row 11 stands alone: lining 70 mm between unsealed doors is said to gain 12.
  it.each(PAIRS)('row $row: $type, $gapMm mm, $seal seals is $stc within 6', ({ type, gapMm, seal, stc }) => {
    const sound = soundOf(made(type, seal), inOpening('door', { pairGapMm: gapMm }))
    expect(Math.abs(sound.stc! - stc)).toBeLessThanOrEqual(6)
    expect(sound.likely![0]).toBeLessThanOrEqual(stc)
    expect(sound.likely![1]).toBeGreaterThanOrEqual(stc)
  })

  it('are told as pairs with a spread that is no more than what is added for it', () => {
    const off = PAIRS.map(
      ({ type, gapMm, seal, stc }) => soundOf(made(type, seal), inOpening('door', { pairGapMm: gapMm })).stc! - stc,
    )
    expect(Math.sqrt(off.reduce((sum, value) => sum + value * value, 0) / off.length)).toBeLessThanOrEqual(4)
  })
})

/** The same handbook, Table 31.8: two panes with air between, sealed. The method was made without any window. */
const WINDOWS = [
  { row: '31.8-10', outer: 3, gapMm: 30, inner: 3, isLaminated: false, stc: 36 },
  { row: '31.8-13', outer: 3, gapMm: 100, inner: 3, isLaminated: false, stc: 42 },
  { row: '31.8-19', outer: 6, gapMm: 50, inner: 6, isLaminated: false, stc: 42 },
  { row: '31.8-21', outer: 6, gapMm: 120, inner: 6, isLaminated: false, stc: 46 },
  { row: '31.8-26', outer: 6, gapMm: 60, inner: 7, isLaminated: true, stc: 46 },
  { row: '31.8-27', outer: 6, gapMm: 100, inner: 7, isLaminated: true, stc: 48 },
] as const

type PrintedWindow = (typeof WINDOWS)[number]

/** Calculated less printed. */
function windowOff({ outer, gapMm, inner, isLaminated, stc }: PrintedWindow): number {
  const panes = { outer: { thicknessMm: outer, isLaminated: false }, gapMm, inner: { thicknessMm: inner, isLaminated } }
  const context = inOpening('window', { widthMm: 1200, heightMm: 900 })
  return soundOf(made('window-pane-pair', 'good', { panes }), context).stc! - stc
}

describe('pairs of panes in print', () => {
  // Three standard deviations of the family (spread.json: 3.0): two tables of glazing at hand disagree by about 4.
  it.each(WINDOWS)('row $row: $outer | $gapMm | $inner mm is $stc within 9', (row) => {
    expect(Math.abs(windowOff(row))).toBeLessThanOrEqual(9)
  })

  it('are told within the spread that is said of them', () => {
    const off = WINDOWS.map(windowOff)
    expect(Math.sqrt(off.reduce((sum, value) => sum + value * value, 0) / off.length)).toBeLessThanOrEqual(4)
  })
})

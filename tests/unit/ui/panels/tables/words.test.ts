import { describe, expect, it } from 'vitest'
import type { OpeningCheck } from '#analysis/results.ts'
import type { Opening } from '#analysis/room.ts'
import { slopeWords } from '#ui/panels/bench/heights/slopeWords.ts'
import { checkParts, checkRows, openingWords } from '#ui/panels/bench/openings/openingWords.ts'

const door: Opening = {
  id: 'opening-1',
  kind: 'door',
  name: 'Stair door',
  wall: 'wall-1',
  fromMm: 600,
  widthMm: 813,
  heightMm: 2032,
  sillMm: 0,
  hinge: 'to',
  swing: 'out',
  leaves: 'one',
  hungIn: 'lining',
  lobby: { hinge: 'from', swing: 'in' },
  revealLiningMm: 16,
  shape: 'rectangular',
}

const check: OpeningCheck = {
  id: 'opening-1',
  revealDepthMm: 146,
  clearWidthMm: 781,
  clearHeightMm: 2003,
  thresholdStepMm: 13,
  door: {
    leaves: [
      { hangs: 'in the new lining', swing: 'out', opensDeg: 78.4, sweep: [], leaf: [], hinge: [0, 0], widthMm: 781 },
      { hangs: 'in the lobby', swing: 'in', opensDeg: 90, sweep: [], leaf: [], hinge: [0, 0], widthMm: 781 },
    ],
  },
  problems: [],
}

describe('what is said of an opening', () => {
  it('names the side, the way and the wall of every leaf', () => {
    expect(openingWords(door, [4, 5])).toBe(
      'door hinged towards corner 5, out of the room, hung in the new lining; lobby door hinged towards corner 4, into the room',
    )
    expect(openingWords({ ...door, leaves: 'two', lobby: null, hungIn: 'existing' }, [4, 5])).toBe(
      'door of two leaves, out of the room',
    )
    expect(openingWords({ ...door, kind: 'window' }, [4, 5])).toBe('window')
    expect(openingWords({ ...door, kind: 'vent', shape: 'round' }, [4, 5])).toBe('round vent or duct')
  })

  it('gives every figure of the check, and says where a leaf stops short', () => {
    expect(checkRows(door, check, 'mm')).toEqual([
      ['Reveal', '146 mm deep'],
      ['Clear width', '781 mm'],
      ['Clear height over the new floor', '2003 mm'],
      ['Step at the threshold', '13 mm'],
      ['Leaf 1 hangs', 'in the new lining'],
      ['Leaf 1 opens', 'to 78° only'],
      ['Leaf 2 hangs', 'in the lobby'],
      ['Leaf 2 opens', 'to 90°'],
    ])
    expect(checkParts(door, check, 'mm')).toEqual([
      'reveal 146 mm',
      'clear 781 mm × 2003 mm',
      'step 13 mm',
      'opens to 78° only and to 90°',
    ])
  })

  it('speaks of no threshold under a sill', () => {
    const rows = checkRows({ ...door, kind: 'window', sillMm: 900 }, { ...check, door: null }, 'mm')
    expect(rows.map(([name]) => name)).toEqual(['Reveal', 'Clear width', 'Head over the new floor'])
    expect(checkParts({ ...door, kind: 'window', sillMm: 900 }, { ...check, door: null }, 'mm')).toEqual([
      'reveal 146 mm',
      'clear width 781 mm',
      'head 2003 mm over the new floor',
    ])
  })
})

describe('how a plane lies', () => {
  it('is level, or rises towards a side by so much in a metre', () => {
    expect(slopeWords({ perX: 0, perY: 0 }, 'mm')).toBe('level')
    expect(slopeWords({ perX: 0, perY: -0.0083333 }, 'mm')).toBe('rises down the page by 8.3 mm in a metre (0.48°)')
    expect(slopeWords({ perX: 0.03, perY: 0.04 }, 'mm')).toBe(
      'rises to the right and up the page by 50.0 mm in a metre (2.86°)',
    )
    expect(slopeWords({ perX: -1 / 12, perY: 0 }, 'ft-in')).toMatch(
      /^rises to the left by 83\.3 mm in a metre, 1" in a foot/,
    )
  })
})

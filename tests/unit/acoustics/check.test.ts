import { describe, expect, it } from 'vitest'
import { checkSystem } from '#acoustics/layered/check.ts'
import type { LayeredSystem, Link } from '#acoustics/layered/system.ts'
import { cavityOf, leafOf } from '../../support/acoustics.ts'

const BOARD = leafOf('gypsum-type-x', 15.875)
const wall = (link: Link, depthMm = 89, fillMm = 0): LayeredSystem => ({
  leaves: [BOARD, BOARD],
  cavities: [cavityOf(depthMm, fillMm, link)],
})

function messages(system: LayeredSystem): readonly string[] {
  const checked = checkSystem(system)
  return checked.ok ? [] : checked.error.map((problem) => problem.message)
}

describe('checkSystem', () => {
  it('passes what can be computed, a single board and touching leaves included', () => {
    expect(messages({ leaves: [BOARD], cavities: [] })).toEqual([])
    expect(messages(wall({ kind: 'none' }, 0))).toEqual([])
    expect(messages(wall({ kind: 'wood-stud', spacingMm: 406.4 }, 89, 89.5))).toEqual([])
  })

  it.each([
    { name: 'nothing', system: { leaves: [], cavities: [] }, says: 'no board, pane or slab' },
    {
      name: 'a leaf too few',
      system: { leaves: [BOARD], cavities: [cavityOf(89, 0)] },
      says: '1 leaves and 1 cavities',
    },
    {
      name: 'an empty leaf',
      system: { leaves: [{ sheets: [], dampedJoints: [] }], cavities: [] },
      says: 'Leaf 1 has no sheet',
    },
    {
      name: 'a negative board',
      system: { leaves: [leafOf('osb', -3)], cavities: [] },
      says: 'Sheet 1 of leaf 1 has a thickness of -3 mm',
    },
    {
      name: 'a board of no number',
      system: { leaves: [leafOf('osb', Number.NaN)], cavities: [] },
      says: 'thickness of NaN',
    },
    {
      name: 'a weightless board',
      system: {
        leaves: [{ sheets: [{ material: 'osb', thicknessMm: 11, surfaceMassKgM2: 0 }], dampedJoints: [] }],
        cavities: [],
      },
      says: 'weighs 0 kg/m2',
    },
    {
      name: 'a compound in no joint',
      system: { leaves: [{ ...BOARD, dampedJoints: [0] }], cavities: [] },
      says: 'joint 1, which does not lie between',
    },
    { name: 'too much fill', system: wall({ kind: 'none' }, 89, 140), says: 'Cavity 1 has 140 mm of fill' },
    { name: 'a cavity of minus one', system: wall({ kind: 'none' }, -1), says: 'Cavity 1 is -1 mm deep' },
    { name: 'studs at nought', system: wall({ kind: 'wood-stud', spacingMm: 0 }), says: 'stud spacing of 0 mm' },
    {
      name: 'channels at nought',
      system: wall({ kind: 'resilient-channel', frame: 'wood-stud', channelSpacingMm: 0 }),
      says: 'channel spacing of 0 mm',
    },
    {
      name: 'clips too far apart',
      system: wall({ kind: 'sound-clip', frame: 'wood-stud', rowSpacingMm: 610, clipSpacingMm: 1e6 }),
      says: 'clip spacing of 1000000 mm',
    },
    {
      name: 'hangers at nought',
      system: wall({ kind: 'spring-hanger', frame: 'wood-stud', rowSpacingMm: 0, hangerSpacingMm: 1200 }),
      says: 'row spacing of 0 mm',
    },
  ] as const)('refuses $name and says where', ({ system, says }) => {
    expect(messages(system).join(' ')).toContain(says)
  })
})

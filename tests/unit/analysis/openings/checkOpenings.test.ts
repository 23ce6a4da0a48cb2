import { describe, expect, it } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import { dropClashes } from '#analysis/openings/clash.ts'
import { placedOpenings, surroundingsOf } from '#analysis/openings/site.ts'
import type { OpeningCheck, SchemeResult } from '#analysis/results.ts'
import type { Opening, Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { outlineArea } from '#geometry/outline.ts'
import { aDoor, aPlanRoom } from '../../../support/drawing.ts'
import { aHeight, aScheme, box, aRoom as plainRoom, resultsOf } from '../../../support/rooms.ts'
import { analyse, CATALOGUE, deepFreeze, openSample } from '../../../support/samples.ts'

/** 12 by 20 ft; W07 takes 73.025 mm, W14 146.05, F01 12.7. */
function aRoom(openings: readonly Opening[], more: Partial<Room> = {}): Room {
  const room = aPlanRoom({
    corners: [
      [0, 0],
      [3657.6, 0],
      [3657.6, 6096],
      [0, 6096],
    ],
    openings,
  })
  return deepFreeze({ ...room, ...more })
}

function schemeOf(walls: readonly string[], floor = 'as-is'): Scheme {
  const choices = walls.map((assembly, index) => [`w${index + 1}`, { assembly, removeLining: false }])
  return {
    id: 's',
    name: 'S',
    choices: { ...Object.fromEntries(choices), floor: { assembly: floor, removeLining: false } },
  }
}

function result(room: Room, scheme: Scheme): SchemeResult {
  const analysed = analyseScheme({ room, scheme, catalogue: CATALOGUE, quality: 'drag' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return analysed.value
}

function check(opening: Partial<Opening>, walls: readonly string[], floor = 'as-is'): OpeningCheck {
  return result(aRoom([aDoor(opening)]), schemeOf(walls, floor)).openings[0]!
}

const codes = ({ problems }: OpeningCheck): string[] => problems.map(({ code }) => code)
const W07 = 73.025
const LEAF = 44.45
const ALL_W07 = ['W07', 'W07', 'W07', 'W07']

describe('what linings and floor leave of a door', () => {
  it('gives reveal, clear width, head and step in closed form', () => {
    const lined = check({ revealLiningMm: 12.7, hungIn: 'lining' }, ALL_W07, 'F01')
    expect(lined.revealDepthMm).toBeCloseTo(W07, 9)
    expect(lined.clearWidthMm).toBeCloseTo(812.8 - 2 * 12.7, 9)
    expect(lined.clearHeightMm).toBeCloseTo(2032 - 12.7 - 12.7, 9)
    expect(lined.thresholdStepMm).toBeCloseTo(12.7, 9)
  })

  it('has no reveal and no step where nothing is built', () => {
    const bare = check({}, [])
    expect(bare).toMatchObject({ revealDepthMm: 0, clearWidthMm: 812.8, clearHeightMm: 2032, thresholdStepMm: 0 })
    expect(bare.door?.leaves[0]?.opensDeg).toBe(180)
    expect(bare.problems).toEqual([])
  })

  it('says that a raised floor stops a leaf that swings in, and only that', () => {
    expect(codes(check({}, ALL_W07, 'F01'))).toContain('floor-stops-leaf')
    expect(codes(check({ swing: 'out' }, ALL_W07, 'F01'))).not.toContain('floor-stops-leaf')
    expect(codes(check({ hungIn: 'lining' }, ALL_W07, 'F01'))).not.toContain('floor-stops-leaf')
    expect(codes(check({}, ALL_W07))).not.toContain('floor-stops-leaf')
  })

  it('follows the floor under the door where it falls', () => {
    const heights = [
      { id: 'h1', xMm: 0, yMm: 0, heightMm: 2641.6, floorMm: -50.8 },
      { id: 'h2', xMm: 0, yMm: 6096, heightMm: 2590.8, floorMm: 0 },
    ]
    const room = aRoom([aDoor({ wall: 'w1', fromMm: 1000 })], { heights })
    const level = {
      ...schemeOf([], 'F01'),
      choices: { floor: { assembly: 'F01', removeLining: false, laidLevel: true } },
    }
    expect(result(room, level).openings[0]!.thresholdStepMm).toBeCloseTo(50.8 + 12.7, 6)
    expect(result(room, schemeOf([], 'F01')).openings[0]!.thresholdStepMm).toBeCloseTo(12.7, 3)
  })
})

describe('how far a leaf opens', () => {
  it('is stopped square by a bare reveal, and its thickness comes off the width', () => {
    const door = check({}, ALL_W07)
    expect(door.door?.leaves[0]?.opensDeg).toBe(90)
    expect(door.clearWidthMm).toBeCloseTo(812.8 - LEAF, 9)
    expect(codes(door)).not.toContain('leaf-stops-short')
  })

  it('stops at atan(d / r) behind a lined reveal and says what to do', () => {
    const door = check({ revealLiningMm: 12.7 }, ALL_W07)
    expect(door.door?.leaves[0]?.opensDeg).toBeCloseTo((Math.atan2(W07, 12.7) * 180) / Math.PI, 9)
    const said = door.problems.find(({ code }) => code === 'leaf-stops-short')?.text
    expect(said).toContain('80 degrees')
    expect(said).toContain('hang the leaf in the new lining')
  })

  it('opens flat on the new face from the lining, and square through the reveal outward', () => {
    expect(check({ hungIn: 'lining' }, ALL_W07).door?.leaves[0]?.opensDeg).toBe(180)
    const out = check({ hungIn: 'lining', swing: 'out' }, ALL_W07)
    expect(out.door?.leaves[0]?.opensDeg).toBe(90)
    expect(out.clearWidthMm).toBeCloseTo(812.8 - LEAF, 9)
    expect(check({ swing: 'out' }, ALL_W07).door?.leaves[0]?.opensDeg).toBe(180)
  })

  it.each([100, 400, 700])('is stopped past square by a neighbour %d mm beside its pin', (beside) => {
    const door = check({ hungIn: 'lining', fromMm: W07 + beside }, ALL_W07)
    const past = 180 - (Math.acos(beside / (812.8 - 0.5)) * 180) / Math.PI
    expect(door.door?.leaves[0]?.opensDeg).toBeCloseTo(past, 6)
    expect(door.problems.map(({ code }) => code)).not.toContain('swing-blocked')
  })

  it('names the obstacle a leaf meets before it is square', () => {
    const pier = {
      id: 'p',
      name: 'Pier',
      liningMm: 0,
      corners: [
        [3000, 1300],
        [3200, 1300],
        [3200, 1500],
        [3000, 1500],
      ].map(([xMm, yMm]) => ({ xMm: xMm!, yMm: yMm! })),
    }
    const room = aRoom([aDoor({ fromMm: 1000 })], { obstacles: [pier] })
    const blocked = result(room, schemeOf(ALL_W07))
    const [door] = blocked.openings
    // The nearest corner within reach of the pin at (3657.6, 1000), looking along the shut leaf (up).
    expect(door!.door!.leaves[0]!.opensDeg).toBeCloseTo((Math.atan2(457.6, 500) * 180) / Math.PI, 6)
    expect(door!.problems.find(({ code }) => code === 'swing-blocked')?.text).toContain('meets Pier at 42 degrees')
    expect(blocked.cautions.find(({ code }) => code === 'swing-blocked')?.kind).toBe('life-safety')
    const without = result(room, { ...schemeOf(ALL_W07), takenOut: ['p'] })
    expect(codes(without.openings[0]!)).not.toContain('swing-blocked')
  })
})

describe('where leaves hang', () => {
  it('hangs on either jamb and sweeps a quarter circle of its width', () => {
    for (const hinge of ['from', 'to'] as const) {
      const [leaf] = check({ hinge }, ALL_W07).door!.leaves
      expect(leaf!.hinge[0]).toBeCloseTo(3657.6, 9)
      expect(leaf!.hinge[1]).toBeCloseTo(hinge === 'from' ? 1000 : 1812.8, 9)
      const area = Math.abs(outlineArea(leaf!.sweep))
      expect(area / ((Math.PI / 4) * 812.8 ** 2)).toBeCloseTo(1, 2)
      expect(leaf!.leaf.every(([x]) => x <= 3657.6 + 1e-9 && x >= 3657.6 - 812.8 - 1e-9)).toBe(true)
      expect(leaf!.hangs).toContain('73 mm')
    }
  })

  it('gives a double door two leaves of half the width', () => {
    const leaves = check({ widthMm: 1600, leaves: 'two' }, ALL_W07).door!.leaves
    expect(leaves.map(({ widthMm }) => widthMm)).toEqual([800, 800])
    expect(leaves[0]!.hinge).not.toEqual(leaves[1]!.hinge)
  })

  it('says what two doors of a lobby do to each other', () => {
    const both = check({ swing: 'in', lobby: { hinge: 'from', swing: 'out' } }, ALL_W07)
    expect(codes(both)).toContain('lobby-blocked')
    expect(both.door!.leaves).toHaveLength(2)
    expect(both.door!.leaves[1]!.hangs).toContain('29 mm')
    expect(codes(check({ swing: 'in', lobby: { hinge: 'from', swing: 'in' } }, ALL_W07))).toContain('lobby-order')
    const apart = codes(check({ swing: 'out', lobby: { hinge: 'from', swing: 'in' } }, ALL_W07))
    expect(apart.filter((code) => code.startsWith('lobby'))).toEqual([])
  })

  it('says where two doors swing over the same floor, once among the cautions', () => {
    const near = [aDoor({}), aDoor({ id: 'd2', name: 'Second door', fromMm: 1900, hinge: 'to' })]
    expect(codes(result(aRoom(near), schemeOf(ALL_W07)).openings[0]!)).not.toContain('swings-cross')
    const second = aDoor({ id: 'd2', name: 'Second door', wall: 'w3', fromMm: 100, hinge: 'to' })
    const crossing = [aDoor({ fromMm: 5000 }), second]
    const analysed = result(aRoom(crossing), schemeOf(ALL_W07))
    expect(codes(analysed.openings[0]!)).toContain('swings-cross')
    expect(analysed.cautions.filter(({ code }) => code === 'swings-cross')).toHaveLength(1)
  })
})

describe('openings that have no place', () => {
  it('says that one is wider than its wall, reaches beyond it, or crosses another', () => {
    expect(codes(check({ widthMm: 7000, fromMm: 0 }, []))).toContain('wider-than-wall')
    expect(codes(check({ fromMm: 5800 }, []))).toContain('beyond-wall')
    const two = [aDoor({}), aDoor({ id: 'd2', name: 'Window', kind: 'window', fromMm: 1500, sillMm: 1000 })]
    expect(codes(result(aRoom(two), schemeOf([])).openings[1]!)).toContain('openings-overlap')
    const over = [aDoor({}), aDoor({ id: 'd2', name: 'Vent', kind: 'vent', fromMm: 1200, sillMm: 2100, heightMm: 100 })]
    expect(codes(result(aRoom(over), schemeOf([])).openings[1]!)).not.toContain('openings-overlap')
  })

  it('takes off what a neighbour covers', () => {
    const covered = check({ kind: 'window', fromMm: 0 }, ALL_W07)
    expect(covered.clearWidthMm).toBeCloseTo(812.8 - W07, 2)
    expect(codes(covered)).toContain('opening-covered')
  })

  it('speaks of an escape window only where the scheme makes it too small', () => {
    const window = { kind: 'window', name: 'Window', sillMm: 900, widthMm: 600, heightMm: 900 } as const
    expect(codes(check(window, ALL_W07))).toEqual([])
    expect(codes(check({ ...window, revealLiningMm: 25 }, ALL_W07))).toEqual(['small-escape-window'])
    expect(codes(check({ ...window, sillMm: 1400, revealLiningMm: 25 }, ALL_W07))).toEqual([])
  })
})

describe('the basement', () => {
  const project = openSample('basement')
  const name = 'A independent on concrete'

  it('finds the duct across the head of the stair door by 3/4 in, and no other clash', () => {
    const [room, scheme] = [project.rooms[0]!, project.schemes.find((one) => one.name === name)!]
    const around = surroundingsOf({ room, scheme, catalogue: CATALOGUE, quality: 'drag' }, analyse(project, name))
    const [door, window] = placedOpenings(around)
    expect(dropClashes(window!, around)).toEqual([])
    const clashes = dropClashes(door!, around)
    expect(clashes.map(({ drop }) => drop)).toEqual(['Duct trunk'])
    expect(clashes[0]!.overlapMm).toBeCloseTo(19.05, 9)
  })

  it('says so in words, as life safety', () => {
    const clash = analyse(project, name).cautions.find(({ code }) => code === 'drop-clash')
    expect(clash?.kind).toBe('life-safety')
    expect(clash?.text).toContain(
      `Duct trunk: its box hangs to 2013 mm (6'-7 1/4") over the existing floor and the head of Stair door is at 2032 mm (6'-8"): they overlap by 19 mm (3/4")`,
    )
  })
})

describe('a floor that is to be laid level where no new floor is built', () => {
  it('makes no step at a door, as it takes no height', () => {
    const room = plainRoom(box(0, 0, 5000, 4000), {
      heights: [aHeight(0, 0, 2400), aHeight(5000, 0, 2500, -100)],
      openings: [aDoor({ wall: 'wall-2' })],
    })
    const choices = { [room.floor.id]: { assembly: 'as-is', removeLining: false, laidLevel: true } }
    const { ledger, openings } = resultsOf(room, aScheme({}, { choices }))
    expect([ledger.clearHeightMm.floorTakes, openings[0]?.thresholdStepMm]).toEqual([0, 0])
  })
})

describe('a door beside the lining of the next wall', () => {
  const opens = (fromMm: number) =>
    resultsOf(
      plainRoom(box(0, 0, 5000, 4000), { openings: [aDoor({ wall: 'wall-1', fromMm, hungIn: 'lining' })] }),
      aScheme({ 'wall-1': 'W14', 'wall-4': 'W14' }),
    ).openings[0]

  it('opens square where the lining, 146.05 mm deep, stands a hair before its hinge, and not where it covers more', () => {
    expect(opens(146)?.door?.leaves[0]?.opensDeg).toBe(90)
    expect(opens(146)?.problems.map(({ code }) => code)).not.toContain('swing-blocked')
    expect(opens(145)?.problems.map(({ code }) => code)).toContain('swing-blocked')
  })
})

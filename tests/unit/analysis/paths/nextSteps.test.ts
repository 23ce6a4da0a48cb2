import { describe, expect, test } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import { type AnswerInput, answerReceivers } from '#analysis/paths/answerReceivers.ts'
import { type NextStep, nextSteps } from '#analysis/paths/nextSteps.ts'
import type { Duct, Opening, Room } from '#analysis/room.ts'
import { type Scheme, withChange } from '#analysis/scheme.ts'
import type { OpeningMade } from '#assemblies/opening.ts'
import { type Asked, anInput, HALL, SEALED } from '../../../support/paths.ts'
import { aScheme } from '../../../support/rooms.ts'
import { CATALOGUE, openSample } from '../../../support/samples.ts'

const GARAGE: Room = { ...openSample('garage').rooms[0]!, ducts: undefined }

/** What there is to answer, with the scheme's results as the page has them. */
function plotted(asked: Asked): AnswerInput {
  const input = anInput(asked)
  const analysed = analyseScheme({ ...input, quality: 'plot' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return { ...input, result: analysed.value }
}

function stepsOf(asked: Asked): readonly NextStep[] {
  return nextSteps(plotted(asked), 'receiver-1')
}

/** The hall with a door in its first wall. */
function withDoor(made: OpeningMade | undefined, change: Partial<Opening> = {}): Room {
  const [door] = GARAGE.openings.filter(({ kind }) => kind === 'door')
  return { ...HALL, openings: [{ ...door!, id: 'door', wall: 'wall-1', fromMm: 1000, made, ...change }] }
}

describe('what to do next', () => {
  const worn = withDoor({ type: 'door-hollow-core', seal: 'worn' })
  const input = plotted({ room: worn, scheme: aScheme({ 'wall-1': 'W14' }, SEALED) })
  const [now] = answerReceivers(input)
  const steps = nextSteps(input, 'receiver-1')

  test('begins with the door where the door is the weakest', () => {
    expect(now!.paths[0]!.path.element).toBe('door')
    expect(steps[0]!.change.openings?.['door']).toBeDefined()
    expect(steps[0]!.label).toMatch(/^(Put into|Seal) Side door/)
  })

  test('gains and takes just what pressing it would', () => {
    for (const step of steps) {
      const scheme = withChange(input.scheme, step.change)
      const analysed = analyseScheme({ ...input, scheme, quality: 'plot' })
      if (!analysed.ok) throw new Error(analysed.error.message)
      const [then] = answerReceivers({ ...input, scheme, result: analysed.value })
      expect(then!.marginDb! - now!.marginDb!).toBeCloseTo(step.gainDb, 9)
      expect(then!.marginLow95Db! - now!.marginLow95Db!).toBeCloseTo(step.gainLow95Db, 9)
      const [before, after] = [input.result.ledger, analysed.value.ledger]
      expect(before.floorAreaM2.clear - after.floorAreaM2.clear).toBeCloseTo(step.areaLostM2, 9)
      expect(after.addedMassKg - before.addedMassKg).toBeCloseTo(step.addedMassKg, 9)
    }
  })

  test('lists the best first, each change once, and nothing that gains less than 0.1 dB', () => {
    const gains = steps.map(({ gainLow95Db }) => gainLow95Db)
    expect(gains).toEqual([...gains].sort((a, b) => b - a))
    for (const { gainDb, gainLow95Db } of steps) {
      expect(Math.max(gainDb, gainLow95Db)).toBeGreaterThanOrEqual(0.1)
      expect(Math.min(gainDb, gainLow95Db)).toBeGreaterThanOrEqual(0)
    }
    const changes = steps.map(({ change }) => JSON.stringify(change))
    expect(new Set(changes).size).toBe(changes.length)
  })

  test('carries the cautions of what it puts there, in full', () => {
    const type = CATALOGUE.openingTypes.get(steps[0]!.change.openings!['door']!.type)!
    expect(steps[0]!.cautions).toEqual(expect.arrayContaining([...type.cautions]))
  })

  test('is nothing while the margin is not known', () => {
    expect(stepsOf({ room: withDoor(undefined) })).toEqual([])
    expect(nextSteps(input, 'nobody')).toEqual([])
  })

  test('is nothing where the catalogue has nothing better', () => {
    const bare = { ...CATALOGUE, assemblies: new Map(), openingTypes: new Map() }
    expect(stepsOf({ scheme: aScheme({}, SEALED), catalogue: bare })).toEqual([])
  })
})

describe('a step for a surface', () => {
  const through = { through: [{ surface: GARAGE.ceiling.id }] }
  const ceiling = (scheme: Scheme, room: Room = GARAGE) => stepsOf({ room, scheme, receiver: through })
  const builtOn = (steps: readonly NextStep[], id: string) => steps.flatMap(({ change }) => change.choices?.[id] ?? [])

  test('never nests joists between trusses, nor hangs a ceiling on walls that carry none', () => {
    const chosen = builtOn(ceiling(aScheme({}, SEALED)), GARAGE.ceiling.id)
    expect(chosen).toHaveLength(1)
    const assembly = CATALOGUE.assemblies.get(chosen[0]!.assembly)!
    expect(assembly.nestedInBays ?? false).toBe(false)
    expect(assembly.loadsExistingJoists).toBe(true)
  })

  test('may put a ceiling on new inner walls where they stand, and says what carries it', () => {
    const walls = Object.fromEntries(GARAGE.walls.map(({ id }) => [id, 'W16']))
    const steps = ceiling(aScheme({ ...walls, [GARAGE.ceiling.id]: 'C01' }, SEALED))
    expect(CATALOGUE.assemblies.get(builtOn(steps, GARAGE.ceiling.id)[0]!.assembly)!.loadsExistingJoists).toBe(false)
    expect(steps[0]!.cautions.join(' ')).toContain('bear on the new inner walls only')
  })

  const lined = (neededForFire: 'yes' | 'no' | 'unknown'): Room => ({
    ...HALL,
    walls: HALL.walls.map((wall) => ({ ...wall, lining: { thicknessMm: 12.7, neededForFire } })),
  })

  test('takes a lining off only where it is known not to be needed for fire, with what that asks', () => {
    const [off] = stepsOf({ room: lined('no') })
    expect(off!.change.choices!['wall-1']!.removeLining).toBe(true)
    expect(off!.label).toMatch(/^Take the lining off Wall 1 and build Wall 1 as /)
    expect(off!.cautions.join(' ')).toContain('asbestos or lead')
    for (const needed of ['yes', 'unknown'] as const) {
      for (const choice of builtOn(stepsOf({ room: lined(needed) }), 'wall-1')) {
        expect(choice.removeLining).toBe(false)
        expect(CATALOGUE.assemblies.get(choice.assembly)!.needsBareFrame).toBe(false)
      }
    }
  })

  test('keeps what the choice says beside the assembly', () => {
    const floor = {
      ...aScheme({}, SEALED),
      choices: { 'floor-1': { assembly: 'F01', removeLining: false, laidLevel: true } },
    }
    const steps = stepsOf({
      scheme: floor,
      receiver: { junction: 'continuous-joists', limit: { kind: 'NC', index: 80 } },
    })
    for (const choice of builtOn(steps, 'floor-1')) expect(choice.laidLevel).toBe(true)
  })

  test('lines the surface beside where what runs along it decides', () => {
    const heavy = HALL.walls.map((wall, k) => (k === 0 ? { ...wall, existing: 'concrete-203' } : wall))
    const [step] = stepsOf({
      room: { ...HALL, walls: heavy },
      scheme: aScheme({ 'wall-1': 'W20' }, SEALED),
      receiver: { junction: 'continuous-joists', limit: { kind: 'dBA', levelDb: 30 } },
    })
    expect(step!.pathId).toMatch(/^flanking:/)
    expect(Object.keys(step!.change.choices!)).toEqual([step!.pathId.replace('flanking:', '')])
  })
})

describe('a step for an opening', () => {
  const window = (sillMm: number, made: OpeningMade): Room =>
    withDoor(made, { kind: 'window', name: 'Window', sillMm, heightMm: 900, widthMm: 900 })
  const putIn = (room: Room) =>
    stepsOf({ room, scheme: aScheme({ 'wall-1': 'W16' }, SEALED) }).flatMap(
      ({ change }) => change.openings?.['door'] ?? [],
    )
  const isShut = ({ type }: OpeningMade) => {
    const { loss, seals } = CATALOGUE.openingTypes.get(type)!
    return loss.kind === 'as-the-wall' || seals === 'none'
  }

  test('plugs a high window, and never one people may escape through', () => {
    const made: OpeningMade = { type: 'window-sash-4', seal: 'good' }
    expect(putIn(window(1500, made)).some(isShut)).toBe(true)
    expect(putIn(window(600, made)).some(isShut)).toBe(false)
    expect(putIn(window(600, made)).length).toBeGreaterThan(0)
  })

  test('never fills in a door', () => {
    expect(putIn(withDoor({ type: 'door-hollow-core', seal: 'good' })).some(isShut)).toBe(false)
  })

  test('renews seals without touching the leaf where only they leak', () => {
    const seals = stepsOf({ room: withDoor({ type: 'door-acoustic-180', seal: 'worn' }) }).filter(({ pathId }) =>
      pathId.startsWith('seal:'),
    )
    expect(seals.map(({ change }) => change.openings!['door'])).toEqual([{ type: 'door-acoustic-180', seal: 'good' }])
  })

  test('says where two doors need more room than the wall has', () => {
    const steps = stepsOf({ room: withDoor({ type: 'door-hollow-core', seal: 'good' }) })
    const pair = steps.find(({ change }) => {
      const made = change.openings?.['door']
      return made && CATALOGUE.openingTypes.get(made.type)!.loss.kind === 'pair'
    })
    if (pair) expect(pair.cautions.join(' ')).toContain('further than this wall and its lining are deep')
  })
})

describe('a step for a leak or a duct', () => {
  const tight = aScheme({ 'wall-1': 'W16' }, SEALED)

  test('closes the gaps by better workmanship, or the one that was typed', () => {
    const [poor] = stepsOf({ scheme: { ...tight, airtightness: 'poor' } })
    expect(poor!.change).toEqual({ airtightness: 'sealed' })
    const [typed] = stepsOf({ scheme: { ...tight, leaks: { 'wall-1': { gapMm: 3, holes: [] } } } })
    expect(typed!.change).toEqual({ leaks: { 'wall-1': { gapMm: 0, holes: [] } } })
    expect(typed!.label).toBe('Close the gap round Wall 1')
  })

  test('closes a hole and leaves the others', () => {
    const hole = (id: string, diameterMm: number) => ({ id, name: `Pipe ${id}`, diameterMm, count: 1 })
    const leaks = { 'wall-1': { holes: [hole('a', 60), hole('b', 2)] } }
    const [step] = stepsOf({ scheme: { ...tight, leaks } })
    expect(step!.label).toBe('Close "Pipe a" in Wall 1')
    expect(step!.change.leaks!['wall-1']!.holes.map(({ id }) => id)).toEqual(['b'])
  })

  test('lines a duct or puts a silencer in, and says what room that takes', () => {
    const duct: Duct = {
      id: 'duct-1',
      name: 'Supply',
      surface: 'wall-1',
      purpose: 'supply',
      shape: 'round',
      widthMm: 160,
      heightMm: 160,
      lengthMm: 2000,
      leadsTo: ['receiver-1'],
      made: { liningMm: 0, linedLengthMm: 0, bends: 0, silencer: null },
    }
    const [step] = stepsOf({ room: { ...HALL, ducts: [duct] }, scheme: tight })
    expect(step!.pathId).toBe('duct:duct-1')
    const made = step!.change.ducts!['duct-1']!
    expect(made.bends).toBe(0)
    expect(made.silencer === null && made.liningMm === 0).toBe(false)
    if (made.silencer) expect(step!.cautions.join(' ')).toContain('place')
  })
})

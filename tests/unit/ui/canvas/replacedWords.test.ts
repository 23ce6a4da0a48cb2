import { expect, test } from 'vitest'
import type { Room } from '#analysis/room.ts'
import { replacedWords, replacingWords } from '#ui/canvas/replacedWords.ts'
import { sampleProject } from '../panels/samples.ts'

const [garage] = sampleProject('garage').rooms as readonly [Room, ...Room[]]
const bare: Room = {
  ...garage,
  walls: garage.walls.map((wall) => ({
    ...garage.walls[0]!,
    id: wall.id,
    from: wall.from,
    to: wall.to,
    outOfTrueMm: 0,
  })),
  openings: [],
  obstacles: [],
  drops: [],
  furniture: [],
  diagonals: [],
  ceilingParts: [],
}

test('an outline that takes nothing with it is not spoken of', () => {
  expect(replacedWords(bare, bare, [])).toBeNull()
})

test('what is gone is counted, and only that', () => {
  const [opening] = garage.openings
  expect(replacedWords({ ...bare, openings: [opening!] }, bare, [])).toBe(
    'The new outline replaces the room: 1 opening of the old one is gone. Undo brings it back.',
  )
  const drop = { id: 'd', name: 'Beam', corners: [], undersideMm: 2000, boxBelowMm: 0, boxSidesMm: 0 }
  const obstacle = { id: 'o', name: 'Pier', corners: [], liningMm: 0 }
  const full = { ...bare, openings: [opening!, opening!], obstacles: [obstacle], drops: [drop, drop] }
  expect(replacedWords(full, bare, [])).toBe(
    'The new outline replaces the room: 2 openings, 1 obstacle and 2 drops of the old one are gone. Undo brings them back.',
  )
})

test('walls that said something else are told to say what Wall 1 said', () => {
  const walls = bare.walls.map((wall, i) => (i === 1 ? { ...wall, outOfTrueMm: 12 } : wall))
  expect(replacedWords({ ...bare, walls }, bare, [])).toContain('every wall is described like the former Wall 1')
})

test('walls that schemes lined differently are told to be lined alike now', () => {
  const lining = { assembly: 'W07', removeLining: false }
  const scheme = { id: 's', name: 'A', choices: { [bare.walls[1]!.id]: lining } }
  expect(replacedWords(bare, bare, [scheme])).toBe(
    'The new outline replaces the room: every wall is lined in each scheme like the former Wall 1. Undo brings the old outline back.',
  )
  const same = Object.fromEntries(bare.walls.map((wall) => [wall.id, lining]))
  expect(replacedWords(bare, bare, [{ ...scheme, choices: same }])).toBeNull()
})

test('what will go is said before the first corner stands', () => {
  const [opening] = garage.openings
  expect(replacingWords(bare, bare, [])).toBe(`The new outline will replace that of "${bare.name}".`)
  expect(replacingWords({ ...bare, openings: [opening!] }, bare, [])).toBe(
    `The new outline will replace that of "${bare.name}": its 1 opening will go.`,
  )
  const diagonals = [{ id: 'd', from: bare.corners[0]!.id, to: bare.corners[2]!.id, measuredMm: 7000 }]
  expect(replacedWords({ ...bare, diagonals }, bare, [])).toContain('1 diagonal of the old one is gone')
})

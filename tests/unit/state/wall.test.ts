import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { deleteCorner, drawOutline, insertCorner, startRectangle } from '#state/commands/outline.ts'
import { moveWall, setWallLength } from '#state/commands/wall.ts'
import { openSample } from '../../support/samples.ts'

const basement = openSample('basement')

function apply(project: Project, ...commands: Command[]): Project {
  return commands.reduce((current, command) => {
    const outcome = command.apply(current)
    if (!outcome.ok) throw new Error(outcome.error.message)
    return outcome.value
  }, project)
}

function points(project: Project): number[][] {
  return (project.rooms[0]?.corners ?? []).map((corner) => [corner.xMm, corner.yMm])
}

describe('wall commands', () => {
  it('set a length and keep every angle', () => {
    expect(points(apply(basement, setWallLength('room-1', 'wall-1', 8000, 'to')))).toEqual([
      [0, 0],
      [8000, 0],
      [8000, 4267.2],
      [4267.2, 4267.2],
      [4267.2, 6096],
      [0, 6096],
    ])
  })

  it('put a length back', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('wall-1', 'wall-2', 'wall-5', 'wall-6'),
        fc.integer({ min: 4500, max: 9000 }),
        (wall, length) => {
          const room = basement.rooms[0]
          const index = room?.walls.findIndex((entry) => entry.id === wall) ?? -1
          const from = room?.corners[index]
          const to = room?.corners[(index + 1) % 6]
          if (!from || !to) throw new Error('no wall')
          const before = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
          const there = setWallLength('room-1', wall, length, 'to').apply(basement)
          if (!there.ok) return
          const back = points(apply(there.value, setWallLength('room-1', wall, before, 'to')))
          back.flat().forEach((value, i) => {
            expect(value).toBeCloseTo(points(basement).flat()[i] ?? Number.NaN, 6)
          })
        },
      ),
    )
  })

  it('move a wall and put it back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }), fc.integer({ min: -400, max: 400 }), (wall, by) => {
        const there = moveWall('room-1', `wall-${wall}`, by).apply(basement)
        if (!there.ok) return
        const back = apply(there.value, moveWall('room-1', `wall-${wall}`, -by))
        points(back)
          .flat()
          .forEach((value, i) => {
            expect(value).toBeCloseTo(points(basement).flat()[i] ?? Number.NaN, 6)
          })
      }),
    )
  })

  it('insert a corner and take it out again', () => {
    const back = apply(basement, insertCorner('room-1', 'wall-1', 300), deleteCorner('room-1', 'corner-7'))
    expect(points(back)).toEqual(points(basement))
    expect(back.rooms[0]?.walls).toEqual(basement.rooms[0]?.walls)
  })

  it.each([
    [0, 4000, 'The width has to be more than 0; the drawing was kept as it was.'],
    [3000, Number.NaN, 'The length has to be more than 0; the drawing was kept as it was.'],
  ])('refuse a room of %s x %s', (width, length, message) => {
    const outcome = startRectangle('room-1', width, length).apply(basement)
    expect(outcome).toEqual({ ok: false, error: { code: 'not-positive', message } })
  })
})

describe('an outline drawn', () => {
  it('closes where it came back to its first corner, within what rounding leaves', () => {
    const drawn = apply(
      basement,
      drawOutline('room-1', [
        [0, 0],
        [4000, 0],
        [4000, 3000],
        [4000, 3000],
        [0, 3000],
        [0.2, 0.1],
      ]),
    )
    expect(points(drawn)).toEqual([
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ])
    expect(drawn.rooms[0]?.walls).toHaveLength(4)
  })
})

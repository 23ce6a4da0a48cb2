import { describe, expect, it } from 'vitest'
import type { Room } from '#analysis/room.ts'
import { isInside, targetAt } from '#ui/canvas/nearest.ts'
import { rectangularProject } from '#ui/newProject.ts'

const room = rectangle()
const REACH = { corner: 100, wall: 80 }
const NONE: ReadonlySet<string> = new Set()

describe('what lies under the pointer', () => {
  it('is the nearest wall, from either side of its line', () => {
    expect(targetAt(room, [2000, -60], REACH, NONE, [])).toEqual({ kind: 'wall', id: room.walls[0]?.id })
    expect(targetAt(room, [3950, 1500], REACH, NONE, [])).toEqual({ kind: 'wall', id: room.walls[1]?.id })
  })

  it('is the wall as far as its strip reaches into the room, and not outside', () => {
    expect(targetAt(room, [2000, 140], REACH, NONE, [150, 0, 0, 0]).kind).toBe('wall')
    expect(targetAt(room, [2000, -140], REACH, NONE, [150, 0, 0, 0]).kind).toBe('outside')
  })

  it('is a corner only where a handle shows', () => {
    const id = room.corners[0]?.id ?? ''
    expect(targetAt(room, [50, 50], REACH, new Set([id]), [])).toEqual({ kind: 'corner', id })
    expect(targetAt(room, [50, 50], REACH, NONE, []).kind).toBe('wall')
  })

  it('is the room or the paper elsewhere', () => {
    expect(targetAt(room, [2000, 1500], REACH, NONE, []).kind).toBe('inside')
    expect(targetAt(room, [9000, 1500], REACH, NONE, []).kind).toBe('outside')
    const notch = [
      [0, 0],
      [2, 0],
      [2, 2],
      [1, 1],
      [0, 2],
    ] as const
    expect(isInside(notch, [1, 1.5])).toBe(false)
    expect(isInside(notch, [1, 0.5])).toBe(true)
  })
})

function rectangle(): Room {
  const project = rectangularProject('mm', { width: 4000, length: 3000, height: 2400 })
  const made = project.ok ? project.value.rooms[0] : undefined
  if (!made) throw new Error('no room')
  return made
}

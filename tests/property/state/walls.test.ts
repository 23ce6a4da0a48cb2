import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Project } from '#project/project.ts'
import { wallLength } from '#state/commands/openingChecks.ts'
import { deleteCorner, insertCorner } from '#state/commands/outline.ts'
import { moveWall, setWallLength } from '#state/commands/wall.ts'
import { anyFurnishedProject, anyShare, firstDifference } from '../../support/anyProject.ts'
import { fuzzRuns } from '../../support/geometryFuzz.ts'

/** What there and back leaves changed; null: nothing, or the way there was refused. */
function thereAndBack(project: Project, there: ReturnType<typeof moveWall>, back: ReturnType<typeof moveWall>) {
  const gone = there.apply(project)
  if (!gone.ok) return 'refused'
  const returned = back.apply(gone.value)
  return returned.ok ? firstDifference(returned.value, project) : returned.error.message
}

function wallOf(project: Project, pick: number) {
  const room = project.rooms[0]
  const index = pick % (room?.walls.length ?? 1)
  const wall = room?.walls[index]
  if (!room || !wall) throw new Error('no wall')
  return { id: wall.id, length: wallLength(room.corners, index) }
}

/** Most draws have to be carried out, or the law was hardly tried. */
function expectTried(outcomes: readonly (string | null)[], least: number): void {
  expect(outcomes.filter((outcome) => outcome !== null && outcome !== 'refused')).toEqual([])
  expect(outcomes.filter((outcome) => outcome === null).length).toBeGreaterThan(least * outcomes.length)
}

describe('there and back, in any room with doors, linings and diagonals', () => {
  it('a corner put in and taken out changes nothing', () => {
    const outcomes: (string | null)[] = []
    fc.assert(
      fc.property(anyFurnishedProject(), fc.nat(), anyShare, (project, pick, share) => {
        const { id, length } = wallOf(project, pick)
        const there = insertCorner('room-1', id, length * share).apply(project)
        if (!there.ok) return void outcomes.push('refused')
        const corner = there.value.rooms[0]?.corners.find(
          (candidate) => !project.rooms[0]?.corners.some((other) => other.id === candidate.id),
        )
        const back = deleteCorner('room-1', corner?.id ?? '').apply(there.value)
        outcomes.push(back.ok ? firstDifference(back.value, project) : back.error.message)
      }),
      fuzzRuns(300),
    )
    expectTried(outcomes, 0.4)
  })

  it('a wall moved parallel and moved back changes nothing', () => {
    const outcomes: (string | null)[] = []
    fc.assert(
      fc.property(anyFurnishedProject(), fc.nat(), fc.integer({ min: -600, max: 600 }), (project, pick, by) => {
        const { id } = wallOf(project, pick)
        outcomes.push(thereAndBack(project, moveWall('room-1', id, by), moveWall('room-1', id, -by)))
      }),
      fuzzRuns(300),
    )
    expectTried(outcomes, 0.3)
  })

  it('a wall in line with its neighbours moves out as a bay and back without a trace', () => {
    const outcomes: (string | null)[] = []
    fc.assert(
      fc.property(anyFurnishedProject(), fc.nat(), fc.integer({ min: 1, max: 400 }), (project, pick, by) => {
        const { id, length } = wallOf(project, pick)
        const one = insertCorner('room-1', id, length * 0.2).apply(project)
        const two = one.ok ? insertCorner('room-1', id, length * 0.1).apply(one.value) : one
        if (!two.ok) return
        const middle = two.value.rooms[0]?.walls.at((two.value.rooms[0]?.walls.findIndex((w) => w.id === id) ?? 0) + 1)
        if (!middle) return
        outcomes.push(thereAndBack(two.value, moveWall('room-1', middle.id, -by), moveWall('room-1', middle.id, by)))
      }),
      fuzzRuns(300),
    )
    expectTried(outcomes, 0.3)
  })

  it.each(['from', 'to'] as const)('a length set and set back, its %s end moving, changes nothing', (moves) => {
    const outcomes: (string | null)[] = []
    fc.assert(
      fc.property(
        anyFurnishedProject(),
        fc.nat(),
        fc.double({ min: 0.5, max: 1.5, noNaN: true }),
        (project, pick, share) => {
          const { id, length } = wallOf(project, pick)
          const there = setWallLength('room-1', id, length * share, moves)
          outcomes.push(thereAndBack(project, there, setWallLength('room-1', id, length, moves)))
        },
      ),
      fuzzRuns(300),
    )
    expectTried(outcomes, 0.2)
  })
})

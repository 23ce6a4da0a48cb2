import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Room } from '#analysis/room.ts'
import { layersDepth } from '#assemblies/layer.ts'
import { outlineArea } from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Placement, Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import { changePartition, cutRoom, joinRooms } from '#state/commands/partitions.ts'
import { ringOf } from '#state/commands/rings.ts'
import { moveWall } from '#state/commands/wall.ts'
import { anyFurnishedProject, anyShare, firstDifference } from '../../support/anyProject.ts'
import { fuzzRuns } from '../../support/geometryFuzz.ts'
import { CATALOGUE } from '../../support/samples.ts'

const CONSTRUCTION = 'block-dense-100'
const DEPTH = layersDepth(CATALOGUE.existing.get(CONSTRUCTION)?.layers ?? [])

/** Doors stand between 0.3 and 0.7 of every wall. */
const besideDoors = anyShare.map((share) => (share < 0.5 ? 0.08 + share * 0.44 : 0.7 + (share - 0.5) * 0.44))

/** A cut of any room between two places on two of its walls. */
const anyCut = fc.record({
  project: anyFurnishedProject(),
  one: fc.nat(),
  other: fc.nat(),
  shares: fc.tuple(besideDoors, besideDoors),
  placement: fc.constantFrom<Placement>('first', 'middle', 'second'),
})

function onWall(room: Room, pick: number, share: number): Point {
  const index = pick % room.corners.length
  const [from, to] = [room.corners[index], room.corners[(index + 1) % room.corners.length]]
  if (!from || !to) throw new Error('no wall')
  return [from.xMm + (to.xMm - from.xMm) * share, from.yMm + (to.yMm - from.yMm) * share]
}

function cut({ project, one, other, shares, placement }: typeof anyCut extends fc.Arbitrary<infer T> ? T : never) {
  const room = project.rooms[0]
  if (!room) throw new Error('no room')
  const [from, to] = [onWall(room, one, shares[0]), onWall(room, other, shares[1])]
  return cutRoom('room-1', from, to, { construction: CONSTRUCTION, placement, name: 'Partition' }).apply(project)
}

const areaOf = (room: Room) => outlineArea(ringOf(room.corners))

/** Distance of the two faces of the only partition, measured square from the first to the ends of the second, mm. */
function gaps(project: Project): readonly number[] {
  const [first, second] = (project.partitions[0]?.sides ?? []).map((side) => {
    const room = project.rooms.find(({ id }) => id === side.room)
    const index = room?.walls.findIndex(({ id }) => id === side.wall) ?? -1
    const [from, to] = [room?.corners[index], room?.corners[(index + 1) % (room?.corners.length ?? 1)]]
    if (!from || !to) throw new Error('a side is not there')
    return [from, to] as const
  })
  if (!first || !second) throw new Error('no partition')
  const [a, b] = first
  const length = Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm)
  return second.map((end) => -((b.xMm - a.xMm) * (end.yMm - a.yMm) - (b.yMm - a.yMm) * (end.xMm - a.xMm)) / length)
}

describe('a partition in any room', () => {
  it('leaves two rooms its depth apart, which add up to the room without the strip between them', () => {
    let tried = 0
    fc.assert(
      fc.property(anyCut, (draw) => {
        const outcome = cut(draw)
        if (!outcome.ok) return
        tried += 1
        const [first, second] = outcome.value.rooms
        const former = draw.project.rooms[0]
        if (!first || !second || !former) throw new Error('no rooms')
        for (const gap of gaps(outcome.value)) expect(gap).toBeCloseTo(DEPTH, 6)
        const ends = outcome.value.partitions[0]?.sides.map(({ room, wall }) => {
          const part = outcome.value.rooms.find(({ id }) => id === room)
          const index = part?.walls.findIndex(({ id }) => id === wall) ?? -1
          const [from, to] = [part?.corners[index], part?.corners[(index + 1) % (part?.corners.length ?? 1)]]
          return [from, to].map((corner): Point => [corner?.xMm ?? 0, corner?.yMm ?? 0])
        })
        const strip = Math.abs(outlineArea((ends ?? []).flat().toReversed()))
        expect(Math.abs(areaOf(first) + areaOf(second) + strip - areaOf(former))).toBeLessThan(1e-3)
        const openings = [...first.openings, ...second.openings].map(({ id }) => id).sort()
        expect(openings).toEqual(former.openings.map(({ id }) => id).sort())
      }),
      fuzzRuns(500),
    )
    expect(tried).toBeGreaterThan(60)
  })

  it('is gone without a trace when the rooms are joined again', () => {
    const left: string[] = []
    fc.assert(
      fc.property(anyCut, (draw) => {
        const outcome = cut(draw)
        if (!outcome.ok) return
        const back = joinRooms(outcome.value.partitions[0]?.id ?? '').apply(outcome.value)
        if (!back.ok) throw new Error(back.error.message)
        const { rooms, schemes, partitions } = back.value
        expect(partitions).toEqual([])
        const sorted = (project: Project) => ({
          schemes: project.schemes,
          rooms: project.rooms.map((room) => ({
            ...room,
            openings: room.openings.toSorted((a, b) => a.id.localeCompare(b.id)),
            diagonals: [],
          })),
        })
        const difference = firstDifference(sorted({ ...back.value, rooms, schemes }), sorted(draw.project))
        if (difference) left.push(difference)
      }),
      fuzzRuns(500),
    )
    expect(left).toEqual([])
  })

  it('keeps its depth when a wall of it is moved, and takes another when it is built otherwise', () => {
    let tried = 0
    fc.assert(
      fc.property(anyCut, fc.integer({ min: -300, max: 300 }), fc.boolean(), (draw, by, moveSecond) => {
        const outcome = cut(draw)
        if (!outcome.ok) return
        const side = outcome.value.partitions[0]?.sides[moveSecond ? 1 : 0]
        const moved = moveWall(side?.room ?? '', side?.wall ?? '', by).apply(outcome.value)
        if (!moved.ok) return
        tried += 1
        for (const gap of gaps(moved.value)) expect(gap).toBeCloseTo(DEPTH, 6)
        const id = moved.value.partitions[0]?.id ?? ''
        const thicker = changePartition(id, { construction: 'concrete-203', placement: 'first' }).apply(moved.value)
        if (thicker.ok) for (const gap of gaps(thicker.value)) expect(gap).toBeCloseTo(203, 0)
        const back = moveWall(side?.room ?? '', side?.wall ?? '', -by).apply(moved.value)
        expect(back.ok ? firstDifference(back.value, outcome.value) : back.error.message).toBeNull()
      }),
      fuzzRuns(500),
    )
    expect(tried).toBeGreaterThan(40)
  })

  it('may end on another one: every file of it can be read, and joining leaves the first as it was', () => {
    let [tried, onFirst] = [0, 0]
    fc.assert(
      fc.property(anyCut, fc.nat(), besideDoors, fc.nat(), besideDoors, (draw, one, from, other, to) => {
        const first = cut(draw)
        if (!first.ok) return
        const room = first.value.rooms[one % 2]
        if (!room) throw new Error('no room')
        const line = [onWall(room, one, from), onWall(room, other, to)] as const
        const built = { construction: CONSTRUCTION, placement: 'second', name: 'Second' } as const
        const second = cutRoom(room.id, ...line, built).apply(first.value)
        if (!second.ok) return
        tried += 1
        if (second.value.partitions.length > 2) onFirst += 1
        const read = readProject(writeProject(second.value), CATALOGUE)
        expect(read.ok ? firstDifference(read.value.project, second.value) : read.error.problems).toBeNull()
        const back = joinRooms(second.value.partitions.at(-1)?.id ?? '').apply(second.value)
        if (!back.ok) throw new Error(back.error.message)
        const loose = (project: Project) => ({
          partitions: project.partitions,
          schemes: project.schemes,
          // Which corner is counted first may change.
          corners: project.rooms.map(({ corners }) => corners.toSorted((a, b) => a.id.localeCompare(b.id))),
          walls: project.rooms.map(({ walls }) => walls.toSorted((a, b) => a.id.localeCompare(b.id))),
        })
        expect(firstDifference(loose(back.value), loose(first.value))).toBeNull()
        const around = joinRooms(second.value.partitions[0]?.id ?? '').apply(second.value)
        if (around.ok) expect(readProject(writeProject(around.value), CATALOGUE).ok).toBe(true)
      }),
      fuzzRuns(1200),
    )
    expect(tried).toBeGreaterThan(30)
    expect(onFirst).toBeGreaterThan(5)
  })

  it('is written and read as it is', () => {
    fc.assert(
      fc.property(anyCut, (draw) => {
        const outcome = cut(draw)
        const project = outcome.ok ? outcome.value : draw.project
        const read = readProject(writeProject(project), CATALOGUE)
        expect(read.ok ? read.value : read.error.problems).toEqual({ project, warnings: [] })
      }),
      fuzzRuns(200),
    )
  })
})

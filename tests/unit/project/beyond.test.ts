import { describe, expect, test } from 'vitest'
import type { SurfaceRating, SurfaceResult } from '#analysis/results.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { builtBeyond } from '#project/beyond.ts'
import type { Project } from '#project/project.ts'
import { cutRoom } from '#state/commands/partitions.ts'
import { createResultsMemo } from '#state/results.ts'
import { applied, plainProject } from '../../support/anyProject.ts'

/** A plain room cut in two by a wall of this construction. */
function divided(construction: string): Project {
  const cut = { construction, placement: 'middle', name: 'Booth wall' } as const
  return applied(plainProject(6000, 4000, 2400), cutRoom('room-1', [4000, 1000], [4000, 2000], cut))
}

const BLOCK = divided('block-dense-100')
const [HERE, THERE] = BLOCK.partitions[0]!.sides

function schemeWith(built: Readonly<Record<string, string>>): Scheme {
  const choices = Object.entries(built).map(([wall, assembly]) => [wall, { assembly, removeLining: false }])
  return { id: 'scheme-1', name: 'A', choices: Object.fromEntries(choices) }
}

const results = createResultsMemo()

function shared(project: Project, side: { room: string; wall: string }, scheme: Scheme): SurfaceResult {
  const room = project.rooms.find(({ id }) => id === side.room)!
  const analysed = results(project, room, scheme)
  if (!analysed.ok) throw new Error(analysed.error.message)
  return analysed.value.surfaces.find(({ id }) => id === side.wall)!
}

const lossOf = ({ rating }: SurfaceResult): SurfaceRating['prediction']['lossDb'] => rating!.prediction.lossDb

describe('a wall that two rooms share', () => {
  const both = schemeWith({ [HERE.wall]: 'W20', [THERE.wall]: 'W20' })
  const one = schemeWith({ [HERE.wall]: 'W20' })

  test('knows what the scheme builds on its other face, and nothing where nothing is built there', () => {
    const room = { id: HERE.room }
    expect([...builtBeyond(BLOCK, room, both)].map(([wall, { id }]) => [wall, id])).toEqual([[HERE.wall, 'W20']])
    expect(builtBeyond(BLOCK, room, one).size).toBe(0)
    expect(builtBeyond(BLOCK, { id: THERE.room }, one).get(THERE.wall)?.id).toBe('W20')
    expect(builtBeyond({ ...BLOCK, partitions: [] }, room, both).size).toBe(0)
  })

  test('is rated with both linings as one system, and says so', () => {
    const alone = shared(BLOCK, HERE, one)
    const together = shared(BLOCK, HERE, both)
    expect(together.rating!.stc).toBeGreaterThan(alone.rating!.stc)
    expect(together.notes.map(({ code }) => code)).toContain('rated-with-beyond')
    expect(alone.notes.map(({ code }) => code)).not.toContain('rated-with-beyond')
    expect(together.layers).toEqual(alone.layers)
    expect(together.netDepthMm).toBe(alone.netDepthMm)
  })

  test('has one figure, whichever room asks', () => {
    const different = schemeWith({ [HERE.wall]: 'W19', [THERE.wall]: 'W21' })
    for (const scheme of [both, different, one]) {
      const [here, there] = [shared(BLOCK, HERE, scheme), shared(BLOCK, THERE, scheme)]
      for (const [band, loss] of lossOf(here).entries()) expect(loss).toBeCloseTo(lossOf(there)[band]!, 6)
    }
  })

  test('is described anew once the partition is another', () => {
    const before = shared(BLOCK, HERE, both)
    const joined = { ...BLOCK, partitions: [] }
    expect(shared(joined, HERE, both).rating!.stc).toBeLessThan(before.rating!.stc)
    expect(shared(BLOCK, HERE, both).rating).toEqual(before.rating)
  })

  test('keeps what a frame has on its far side between the two linings', () => {
    const frame = divided('stud-2x4-board-far-side')
    const [here, there] = frame.partitions[0]!.sides
    const result = shared(frame, here, schemeWith({ [here.wall]: 'W07', [there.wall]: 'W07' }))
    expect(result.rating).not.toBeNull()
    expect(lossOf(result).every(Number.isFinite)).toBe(true)
  })
})

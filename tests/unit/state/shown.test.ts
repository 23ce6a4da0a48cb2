import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { moveCorner } from '#state/commands/outline.ts'
import { createDocumentStore } from '#state/history.ts'
import { followAtEase, followClosely } from '#state/shown.ts'
import { bigHall } from '../../support/hall.ts'
import { openSample } from '../../support/samples.ts'

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

function nudged(project: ReturnType<typeof bigHall>, by: number) {
  const room = project.rooms[0]!
  const corner = room.corners[0]!
  return moveCorner(room.id, corner.id, corner.xMm - by, corner.yMm)
}

describe('what a part of the page shows', () => {
  it('follows every step of the hand on the plan, and in a usual room in the numbers too', () => {
    const project = openSample('garage')
    const document = createDocumentStore(project)
    const [close, ease] = [followClosely(document.store), followAtEase(document.store)]
    document.show(nudged(project, 10))
    expect(close.getState().project.rooms[0]?.corners[0]?.xMm).toBe(-10)
    expect(ease.getState().project).toBe(close.getState().project)
    document.cancelPreview()
    expect(ease.getState().project).toBe(project)
  })

  it('lets the numbers of a hall wait until the hand rests, and shows what is recorded at once', () => {
    const project = bigHall()
    const document = createDocumentStore(project)
    const [close, ease] = [followClosely(document.store), followAtEase(document.store)]
    for (const by of [10, 20, 30]) {
      document.show(nudged(project, by))
      vi.advanceTimersByTime(20)
      expect(close.getState().project.rooms[0]?.corners[0]?.xMm).toBe(-by)
      expect(ease.getState().project).toBe(project)
    }
    vi.advanceTimersByTime(100)
    expect(ease.getState().project.rooms[0]?.corners[0]?.xMm).toBe(-30)
    document.show(nudged(project, 40))
    document.run(nudged(project, 50))
    expect(ease.getState().project).toBe(document.store.getState().project)
    vi.advanceTimersByTime(1000)
    expect(ease.getState().project.rooms[0]?.corners[0]?.xMm).toBe(-50)
  })
})

import { expect, test } from 'vitest'
import { firstCorner, standingCorners, standingOutlines } from '#ui/canvas/drawStart.ts'
import { createDrawStore } from '#ui/canvas/drawStore.ts'
import { sampleProject } from '../panels/samples.ts'

test('a drawing keeps its corners when what it becomes is changed, and asks how to close until that is taken back', () => {
  const draw = createDrawStore()
  draw.begin({ kind: 'replace', roomId: 'room-1' })
  draw.add([0, 0])
  draw.add([1000, 0])
  draw.aim({ kind: 'another-room' })
  expect(draw.store.getState()).toMatchObject({ target: { kind: 'another-room' }, closing: null })
  draw.askToClose('spread')
  draw.takeBack()
  expect(draw.store.getState()).toMatchObject({
    points: [
      [0, 0],
      [1000, 0],
    ],
    closing: null,
  })
  draw.takeBack()
  expect(draw.store.getState().points).toEqual([[0, 0]])
  draw.askToClose('move')
  draw.add([5, 5])
  expect(draw.store.getState().closing).toBeNull()
  draw.begin({ kind: 'another-room' })
  expect(draw.store.getState().points).toEqual([])
})

test('a further room begins beside the others, and can hold on to them', () => {
  const { rooms } = sampleProject('basement')
  expect(firstCorner({ kind: 'another-room' }, rooms)).toEqual([8315.2, 0])
  expect(firstCorner({ kind: 'another-room' }, [])).toEqual([0, 0])
  expect(firstCorner({ kind: 'replace', roomId: 'room-1' }, rooms)).toEqual([0, 0])
  expect(standingOutlines({ kind: 'another-room' }, rooms)[0]).toHaveLength(6)
  expect(standingOutlines({ kind: 'new-project', project: sampleProject('basement') }, rooms)).toEqual([])
})

test('a further room can begin on a corner that stands, and be begun elsewhere again', () => {
  const corners = standingCorners(sampleProject('basement').rooms)
  expect(corners[1]).toMatchObject({ name: 'Basement, corner 2', at: [7315.2, 0] })
  const draw = createDrawStore()
  draw.startAt(corners[1]!.at)
  expect(draw.store.getState().points).toEqual([[7315.2, 0]])
  draw.startAt(null)
  expect(draw.store.getState().points).toEqual([])
})

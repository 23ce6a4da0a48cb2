import { describe, expect, it } from 'vitest'
import { anObstacle, aRoom, aScheme, box, resultsOf } from '../../support/rooms.ts'

const ROOM = box(0, 0, 5000, 4000)
const LINED = aScheme({ 'wall-1': 'W16' })

/** A pier that reaches 200 mm into the room, before a lining 222.25 mm deep. */
function clearM2(pierFromMm: number): number {
  const pier = anObstacle(box(2000, pierFromMm, 2300, 200), 0)
  return resultsOf(aRoom(ROOM, { obstacles: [pier] }), LINED).ledger.floorAreaM2.clear
}

describe('a lining deeper than a pier', () => {
  it('passes in front of one that stands against the wall, and of one let into it', () => {
    const without = resultsOf(aRoom(ROOM), LINED).ledger.floorAreaM2.clear
    expect(clearM2(0)).toBeCloseTo(without, 6)
    expect(clearM2(-50)).toBeCloseTo(without, 6)
  })
})

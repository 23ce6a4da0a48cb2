import { describe, expect, it } from 'vitest'
import type { Room } from '#analysis/room.ts'
import type { ReceiverPlace } from '#analysis/target.ts'
import { addReceiver, addSource } from '#state/commands/targets.ts'
import { typedSource, usualReceiver, usualSourceOf } from '#state/usualTargets.ts'
import { A_SOURCE, applied, plainProject } from '../../support/anyProject.ts'

const plain = plainProject()

/** A room with a neighbour behind one wall, the own house above and the open behind the rest. */
function facing(...sides: readonly Room['floor']['farSide'][]): Room {
  const [room] = plain.rooms
  if (!room) throw new Error('no room')
  return { ...room, walls: room.walls.map((wall, i) => ({ ...wall, farSide: sides[i] ?? 'outdoors' })) }
}

const surfaces = (kind: ReceiverPlace['kind'], room: Room) =>
  usualReceiver(kind, room, plain).through.map(({ surface }) => surface)

describe('what a receiver is offered with first', () => {
  it('is behind the surfaces that fit it: a neighbour, else the own house; the open for a point outdoors', () => {
    expect(surfaces('room', facing('outdoors', 'neighbour'))).toEqual(['wall-2'])
    expect(surfaces('room', facing())).toEqual(['ceiling-1'])
    expect(surfaces('outdoors', facing('soil', 'neighbour'))).toEqual(['wall-3', 'wall-4'])
    expect(surfaces('this-room', facing('soil', 'neighbour'))).toEqual(['wall-3', 'wall-4'])
  })

  it('hears what can be heard there: traffic comes in, what is played goes out', () => {
    const traffic = usualSourceOf('this-room')
    if (!traffic) throw new Error('no traffic')
    const both = applied(plain, addSource(traffic), addSource(A_SOURCE))
    const heard = (kind: ReceiverPlace['kind']) => usualReceiver(kind, facing(), both).source
    expect([heard('this-room'), heard('room'), heard('outdoors')]).toEqual(['source-1', 'source-2', 'source-2'])
    expect(usualSourceOf('room')).toBeNull()
    expect(usualReceiver('room', facing(), plain).source).toBeNull()
  })

  it.each<ReceiverPlace['kind']>(['room', 'outdoors', 'this-room'])('can be added as it is: %s', (kind) => {
    const [room] = plain.rooms
    if (!room) throw new Error('no room')
    const added = applied(plain, addReceiver(usualReceiver(kind, room, plain), usualSourceOf(kind)))
    expect(added.receivers).toHaveLength(1)
    expect(added.receivers[0]?.limitPreset).not.toBeNull()
  })

  it('says of a preset where its levels come from, and of a typed one that nothing is known yet', () => {
    const typed = typedSource('Measured')
    expect(Object.values(typed.levelsDb).every((level) => level === null)).toBe(true)
    expect(typed).toMatchObject({ preset: null, basis: 'measured' })
    expect(usualSourceOf('this-room')).toMatchObject({ place: 'facade', basis: 'memory', preset: 'traffic-65' })
  })
})

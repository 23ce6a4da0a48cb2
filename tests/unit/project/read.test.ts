import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import { CATALOGUE, openSample, textOf } from '../../support/samples.ts'

const BROKEN = readdirSync(new URL('../../../samples/broken/', import.meta.url)).filter((name) =>
  name.endsWith('.json'),
)

describe('readProject', () => {
  it('reads what writeProject wrote, byte for byte', () => {
    const text = writeProject(openSample('garage'))
    const read = readProject(text, CATALOGUE)
    expect(read.ok && writeProject(read.value.project)).toBe(text)
  })

  it('opens files with a byte order mark', () => {
    expect(readProject(`\uFEFF${textOf('samples/garage/project.json')}`, CATALOGUE).ok).toBe(true)
  })

  it.each(BROKEN)('refuses samples/broken/%s with the sentence beside it', (name) => {
    const read = readProject(textOf(`samples/broken/${name}`), CATALOGUE)
    const expected = textOf(`samples/broken/${name.replace('.json', '.txt')}`)
      .trim()
      .split('\n')
    expect(read.ok).toBe(false)
    if (read.ok) return
    const said = [
      read.error.kind,
      ...(read.error.problems.length > 0 ? read.error.problems.map((p) => p.message) : [read.error.message]),
    ]
    // What follows the reason in brackets is the engine's own wording.
    const plain = (line: string) => line.replace(/JSON \(.*\)\.$/, 'JSON.')
    expect(said.map(plain)).toEqual(expected.map(plain))
  })

  it('drops a repeated corner with its wall and says so', () => {
    const project = structuredClone(openSample('garage'))
    const room = project.rooms[0]
    const corner = room?.corners[1]
    if (!room || !corner) throw new Error('no room')
    const corners = room.corners.toSpliced(2, 0, { ...corner, id: 'corner-9' })
    const second = room.walls[1]
    if (!second) throw new Error('no wall')
    const walls = room.walls.toSpliced(
      1,
      1,
      { ...second, id: 'wall-9', to: 'corner-9' },
      { ...second, from: 'corner-9' },
    )
    const receivers = project.receivers.map((receiver) => ({
      ...receiver,
      through: [{ surface: 'wall-9' }, ...receiver.through],
    }))
    const schemes = project.schemes.map((scheme) => ({
      ...scheme,
      leaks: { ...scheme.leaks, 'wall-9': { gapMm: 1, holes: [] } },
    }))
    const given = { ...project, rooms: [{ ...room, corners, walls }], receivers, schemes }
    const read = readProject(JSON.stringify(given), CATALOGUE)
    if (!read.ok) throw new Error(read.error.message)
    expect(read.value.project.rooms[0]?.corners.map((entry) => entry.id)).toEqual(room.corners.map((entry) => entry.id))
    expect(read.value.project.rooms[0]?.walls).toEqual(room.walls)
    expect(read.value.project.receivers).toEqual(project.receivers)
    expect(read.value.project.schemes.map(({ leaks }) => leaks ?? {})).toEqual(
      project.schemes.map(({ leaks }) => leaks ?? {}),
    )
    expect(read.value.warnings).toEqual([
      'Garage: wall wall-9 has no length (its two corners are the same point); it was dropped.',
    ])
  })
})

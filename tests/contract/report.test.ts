import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { leafgap, npxLeafgap } from '../support/commandLine.ts'
import { textOf } from '../support/samples.ts'

const GARAGE = 'samples/garage/project.json'
const folder = mkdtempSync(join(tmpdir(), 'leafgap-report-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('leafgap report', () => {
  it('prints only JSON with --json, with the contract’s keys, through npx', () => {
    const spoken = npxLeafgap(['report', GARAGE, '--json'])
    expect(spoken.code).toBe(0)
    expect(spoken.stderr).toBe('')
    const { schemes } = JSON.parse(spoken.stdout)
    expect(schemes.map((scheme: { name: string }) => scheme.name)).toContain('C independent room')
    for (const scheme of schemes) {
      for (const key of ['existing', 'gained', 'obstacles', 'lost', 'clear'])
        expect(scheme.floorAreaM2[key]).toBeTypeOf('number')
      expect(scheme.keptPercent).toBeCloseTo((scheme.floorAreaM2.clear / scheme.floorAreaM2.existing) * 100, 9)
      expect(Object.keys(scheme.clearSizeMm).sort()).toEqual(['length', 'width'])
      expect(scheme.clearHeightMm).toHaveProperty('existing')
      expect(scheme.clearHeightMm).toHaveProperty('lowest')
      expect(scheme.volumeM3).toHaveProperty('clear')
      expect(scheme.surfaces.map((surface: { kind: string }) => surface.kind)).toEqual([
        'wall',
        'wall',
        'wall',
        'wall',
        'ceiling',
        'floor',
      ])
    }
    const first = schemes[0].surfaces[0]
    expect(first.assembly).toBe('as-is')
    for (const key of [
      'id',
      'depthFromFaceMm',
      'depthFromStructureMm',
      'areaLostM2',
      'stc',
      'rw',
      'c',
      'ctr',
      'plusMinus95',
    ]) {
      expect(first).toHaveProperty(key)
    }
  })

  it('says unknown as null with a note, never as 0', () => {
    const { schemes } = JSON.parse(leafgap(['report', GARAGE, '--json']).stdout)
    const floor = schemes[1].surfaces[5]
    expect(floor.stc).toBeNull()
    expect(floor.notes.map((note: { code: string }) => note.code)).toContain('soil')
  })

  it('keeps the first room’s schemes in place where there are several, and lists every room’s', () => {
    const garage = JSON.parse(textOf(GARAGE))
    const [room] = garage.rooms
    const ids = (facts: { id: string }) => ({ ...facts, id: `second-${facts.id}` })
    const second = {
      ...room,
      id: 'second',
      name: 'Second',
      walls: room.walls.map(ids),
      ceiling: ids(room.ceiling),
      floor: ids(room.floor),
      openings: [],
      ducts: [],
    }
    const spoken = leafgap(['report', '-', '--json'], JSON.stringify({ ...garage, rooms: [room, second] }))
    expect([spoken.code, spoken.stderr]).toEqual([0, ''])
    const { schemes, rooms } = JSON.parse(spoken.stdout)
    expect(rooms.map(({ id, name }: { id: string; name: string }) => [id, name])).toEqual([
      [room.id, room.name],
      ['second', 'Second'],
    ])
    expect(rooms[0].schemes).toEqual(schemes)
    expect(rooms[1].schemes[1].floorAreaM2.lost).toBe(0)
    expect(JSON.parse(leafgap(['report', GARAGE, '--json']).stdout)).not.toHaveProperty('rooms')
  })

  it('reads standard input for -', () => {
    const piped = leafgap(['report', '-', '--json'], textOf(GARAGE))
    expect(piped.code).toBe(0)
    expect(piped.stdout).toBe(leafgap(['report', GARAGE, '--json']).stdout)
  })

  it('writes files only with --out, into a folder it makes', () => {
    const out = join(folder, 'deep', 'er')
    const spoken = leafgap(['report', GARAGE, '--out', out, '--scheme', 'B clips'])
    expect(spoken.code).toBe(0)
    expect(JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')).schemes).toHaveLength(7)
    expect(readFileSync(join(out, 'ledger.csv'), 'utf8')).toContain('E maximum')
    const svg = readFileSync(join(out, 'plan.svg'), 'utf8')
    expect(svg).toContain('B clips')
    expect(svg).not.toContain('C independent room')
    const [, width = '0'] = /<svg[^>]* width="([\d.]+)mm"/.exec(svg) ?? []
    const [, box = ''] = /viewBox="([^"]+)"/.exec(svg) ?? []
    expect(Number(box.split(' ')[2])).toBe(Number(width))
    expect(svg).toContain('@font-face')
    const png = readFileSync(join(out, 'plan.png'))
    expect(png.subarray(1, 4).toString()).toBe('PNG')
    expect(png.readUInt32BE(16)).toBe(Math.round((Number(width) / 25.4) * 192))
  })

  it('draws the proposal where no scheme is named', () => {
    const out = join(folder, 'proposal')
    leafgap(['report', GARAGE, '--out', out])
    expect(readFileSync(join(out, 'plan.svg'), 'utf8')).toContain('C independent room')
  })

  it('refuses an unknown scheme and writes nothing', () => {
    const out = join(folder, 'nothing')
    const spoken = leafgap(['report', GARAGE, '--scheme', 'B', '--out', out])
    expect(spoken).toMatchObject({ code: 2, stdout: '' })
    expect(spoken.problems[0]).toMatch(/^leafgap: there is no scheme "B"; this project has "A do nothing/)
    expect(existsSync(out)).toBe(false)
  })

  it('says one line a problem, each beginning leafgap:', () => {
    const spoken = leafgap(['report', 'samples/broken/missing-fields.json'])
    expect(spoken).toMatchObject({ code: 2, stdout: '' })
    expect(spoken.problems.length).toBeGreaterThanOrEqual(2)
    for (const line of spoken.problems) expect(line).toMatch(/^leafgap: /)
  })

  it.each([
    [['report', 'no-such-file.json'], /cannot be read/],
    [['report'], /say a file/],
    [['measure', GARAGE], /there is no command "measure"/],
    [['report', GARAGE, '--paper'], /--paper/],
    [[], /say a command/],
  ])('refuses %j with a sentence', (args, sentence) => {
    const spoken = leafgap(args)
    expect(spoken).toMatchObject({ code: 2, stdout: '' })
    expect(spoken.problems[0]).toMatch(sentence)
  })
})

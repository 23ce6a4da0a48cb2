import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { leafgap } from '../support/commandLine.ts'
import { textOf } from '../support/samples.ts'

const folder = mkdtempSync(join(tmpdir(), 'leafgap-receivers-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const OCTAVES = ['63', '125', '250', '500', '1000', '2000', '4000']
const VERDICTS = /^(meets on paper|likely, could be \d+ dB worse|open|does not meet|not known)$/

interface Told {
  readonly name: string
  readonly marginDb: number | null
  readonly marginLow95Db: number | null
  readonly worstBandHz: number | null
  readonly dominantBandHz: number | null
  readonly nic: number | null
  readonly levelsDb: Readonly<Record<string, number | null>>
  readonly limitDb: Readonly<Record<string, number>>
  readonly verdict: string
  readonly sentence: string
  readonly levelA: number | null
  readonly paths: readonly {
    readonly id: string
    readonly kind: string
    readonly areaM2: number
    readonly share: number
    readonly shareAtWorstBand: number
  }[]
  readonly unknown: readonly { readonly why: string }[]
  readonly notes: readonly { readonly code: string; readonly text: string }[]
}

/** Receivers of every scheme that a project's report tells. */
function told(project: unknown): readonly (readonly Told[])[] {
  const spoken = leafgap(['report', '-', '--json'], JSON.stringify(project))
  expect([spoken.code, spoken.stderr]).toEqual([0, ''])
  return JSON.parse(spoken.stdout).schemes.map((scheme: { receivers: readonly Told[] }) => scheme.receivers)
}

const sample = (name: string) => JSON.parse(textOf(`samples/${name}/project.json`))
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

describe.each(['garage', 'basement', 'outbuilding'])('receivers in the report of the %s', (name) => {
  const schemes = told(sample(name))

  it('stand under every scheme with the contract’s keys', () => {
    const count = sample(name).receivers.length
    expect(schemes.map((receivers) => receivers.length)).toEqual(schemes.map(() => count))
    for (const receiver of schemes.flat()) {
      expect(receiver.name).not.toBe('')
      expect(Object.keys(receiver.levelsDb)).toEqual(OCTAVES)
      expect(receiver.verdict).toMatch(VERDICTS)
      expect(receiver.marginDb).not.toBeNull()
      expect(receiver.marginLow95Db).toBeLessThanOrEqual(receiver.marginDb ?? 0)
      for (const { id, kind, areaM2 } of receiver.paths) {
        expect(id).not.toBe('')
        expect(['surface', 'opening', 'leak', 'duct', 'flanking']).toContain(kind)
        expect(areaM2).toBeGreaterThan(0)
      }
    }
  })

  it('share out all of what is heard, overall and at the worst band', () => {
    for (const { paths } of schemes.flat()) {
      expect(sum(paths.map(({ share }) => share))).toBeCloseTo(1, 9)
      expect(sum(paths.map(({ shareAtWorstBand }) => shareAtWorstBand))).toBeCloseTo(1, 9)
    }
  })

  it('name the band that decides, and the limit it was held to', () => {
    for (const receiver of schemes.flat()) {
      const isCurve = Object.keys(receiver.limitDb).length > 1
      const [band, other] = isCurve
        ? [receiver.worstBandHz, receiver.dominantBandHz]
        : [receiver.dominantBandHz, receiver.worstBandHz]
      expect(OCTAVES).toContain(String(band))
      expect(other).toBeNull()
      const margin = isCurve
        ? Math.min(...OCTAVES.map((hz) => (receiver.limitDb[hz] ?? 0) - (receiver.levelsDb[hz] ?? 0)))
        : (receiver.limitDb['A'] ?? 0) - (receiver.levelA ?? 0)
      expect(receiver.marginDb).toBeCloseTo(margin, 9)
    }
  })
})

describe('a receiver of which something is not known', () => {
  const garage = sample('garage')
  const [room] = garage.rooms
  const openings = room.openings.map(({ made: _, ...opening }: { made: unknown }) => opening)
  const bare = garage.schemes.slice(0, 1)

  it('has null for every number, a sentence why, and shares of the rest', () => {
    const [receivers] = told({ ...garage, rooms: [{ ...room, openings }], schemes: bare, proposal: null })
    const [receiver] = receivers ?? []
    expect(receiver).toMatchObject({
      marginDb: null,
      marginLow95Db: null,
      nic: null,
      levelA: null,
      verdict: 'not known',
    })
    expect(Object.values(receiver?.levelsDb ?? {})).toEqual(OCTAVES.map(() => null))
    expect(receiver?.unknown.length).toBe(openings.length)
    for (const { why } of receiver?.unknown ?? []) expect(why).toMatch(/\.$/)
    expect(receiver?.notes.map(({ code }) => code)).toContain('not-known')
  })

  it('that hears nothing, or is behind nothing, says so', () => {
    const change = (patch: object) => ({
      ...garage,
      schemes: bare,
      proposal: null,
      receivers: [{ ...garage.receivers[0], ...patch }],
      rooms: [{ ...room, ducts: [] }],
    })
    expect(told(change({ source: null }))[0]?.[0]).toMatchObject({ marginDb: null, verdict: 'not known' })
    const [behindNothing] = told(change({ through: [] }))[0] ?? []
    expect(behindNothing).toMatchObject({ marginDb: null, verdict: 'not known', paths: [] })
    expect(behindNothing?.sentence).toMatch(/^Bedroom window at night.*\.$/)
  })
})

describe('limits and files', () => {
  it('a dBC limit stands by its letter, and beat is taken off and said', () => {
    const garage = sample('garage')
    const limited = (limit: object, hasBeat: boolean) =>
      told({
        ...garage,
        schemes: garage.schemes.slice(0, 1),
        proposal: null,
        receivers: [{ ...garage.receivers[0], limit, hasBeat }],
        rooms: [{ ...garage.rooms[0], ducts: [] }],
      })[0]?.[0]
    expect(limited({ kind: 'dBC', levelDb: 65 }, false)?.limitDb).toEqual({ C: 65 })
    const beat = limited({ kind: 'NC', index: 25 }, true)
    expect(beat?.limitDb).toEqual({ 63: 49, 125: 39, 250: 32, 500: 26, 1000: 22, 2000: 19, 4000: 17 })
    expect(beat?.notes.map(({ text }) => text)).toContain('The limit is NC-25 less 5 dB for beat or tone.')
  })

  it('a project without receivers has an empty list and says that ratings are of surfaces alone', () => {
    const garage = sample('garage')
    const plain = {
      ...garage,
      receivers: [],
      rooms: [{ ...garage.rooms[0], ducts: [] }],
      schemes: garage.schemes.slice(0, 1),
      proposal: null,
    }
    const spoken = leafgap(['report', '-', '--json'], JSON.stringify(plain))
    const [scheme] = JSON.parse(spoken.stdout).schemes
    expect(scheme.receivers).toEqual([])
    expect(scheme.notes[0].text).toContain('flanking are not in these figures')
  })

  it('paths.csv has a line for every path of every receiver under every scheme', () => {
    const out = join(folder, 'out')
    expect(leafgap(['report', 'samples/outbuilding/project.json', '--out', out]).code).toBe(0)
    const { schemes } = JSON.parse(readFileSync(join(out, 'report.json'), 'utf8'))
    const paths = schemes.flatMap(({ receivers }: { receivers: readonly Told[] }) =>
      receivers.flatMap((one) => one.paths),
    )
    const lines = readFileSync(join(out, 'paths.csv'), 'utf8').trim().split('\r\n')
    expect(lines).toHaveLength(1 + paths.length)
    expect(lines[0]).toMatch(/^scheme,receiver,path,kind,label,"area, m2",share,share at the worst band/)
    expect(readFileSync(join(out, 'ledger.csv'), 'utf8')).toMatch(/"This room, trains passing",margin,-?[\d.]+,dB/)
  })

  it('is told in README.md as it is (REGEN=1 writes it anew)', () => {
    const paper = textOf('README.md')
    const example = /```\n(npx leafgap report (\S+))\n```\n\nsays, [^`]+```\n([\s\S]*?)```/.exec(paper)
    const [whole = '', , file = '', printed = ''] = example ?? []
    const { stdout } = leafgap(['report', file])
    const proposal = stdout.slice(stdout.indexOf('\nD studs close to the piers\n'))
    const first = proposal.slice(proposal.indexOf('  receiver '))
    const said = first.slice(0, first.indexOf('    shares'))
    expect(said).toContain('level, dB')
    if (process.env['REGEN'] === '1') {
      const before = whole.slice(0, whole.length - printed.length - 3)
      writeFileSync(
        'README.md',
        paper.replace(whole, () => `${before}${said}\`\`\``),
      )
    } else expect(printed).toBe(said)
  })

  it('the text says level, limit and verdict of every receiver, and what no airborne figure holds beside each of them', () => {
    const { stdout } = leafgap(['report', 'samples/basement/project.json'])
    const blocks = stdout.split(/\n {2}receiver /).slice(1)
    expect(blocks).toHaveLength(3 * 4)
    for (const block of blocks) {
      expect(block).toMatch(/dB, likely .* to .* dB; (meets on paper|likely, could|open|does not meet)/)
      expect(block).toMatch(/ {4}level, dB( +-?\d+){7}/)
      expect(block).toContain('Structure-borne sound and bass below 50 Hz are not in this figure')
    }
  })
})

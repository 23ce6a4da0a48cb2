import { spawnSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { leafgap, npxLeafgap } from '../support/commandLine.ts'
import { textOf } from '../support/samples.ts'

const board = (thicknessMm: unknown, material: unknown = 'gypsum-type-x') => ({ kind: 'board', material, thicknessMm })
const cavity = (depthMm: unknown, link: unknown, more: object = {}) => ({ kind: 'cavity', depthMm, link, ...more })
const studs = { kind: 'wood-stud', spacingMm: 406.4 }
const wall = (more: object = {}) => ({
  id: 'W1',
  layers: [board(15.875), cavity(89, studs, { fill: 'mineral-wool' }), board(15.875)],
  ...more,
})

const rate = (input: unknown, args: readonly string[] = ['--json']) =>
  leafgap(['rate', '-', ...args], typeof input === 'string' ? input : JSON.stringify(input))
const rateOne = (system: unknown) => JSON.parse(rate({ systems: [system] }).stdout).systems[0]
const KEYS = [
  'id',
  'bandsHz',
  'tlDb',
  'tlSdDb',
  'stc',
  'stcNo8dbRule',
  'rw',
  'c',
  'ctr',
  'c50',
  'ctr50',
  'oitc',
  'physicsStc',
  'plusMinus95',
  'published',
  'resonances',
  'notes',
]

const BAD_LAYERS: readonly (readonly [what: string, layers: readonly unknown[], sentence: string])[] = [
  ['a layer that is none', [3], ', layer 1: a layer has to be an object'],
  [
    'an unknown kind',
    [{ kind: 'bord' }],
    ', layer 1: its kind is "bord"; a layer\'s kind can be board, damping-compound, cavity or filler',
  ],
  [
    'an unknown material',
    [board(12.7, 'chipboard')],
    ', layer 1 (board): the material "chipboard" is not known; it can be gypsum-type-x,',
  ],
  ['a negative thickness', [board(-12.7)], ', layer 1 (board): the thickness of -12.7 mm must be above 0'],
  ['no thickness at all', [board(0)], ', layer 1 (board): the thickness of 0 mm must be above 0'],
  [
    'an absurd thickness',
    [board(15875)],
    ', layer 1 (board): the thickness of 15875 mm must be above 0 and at most 1500 mm',
  ],
  ['null', [board(null)], ', layer 1 (board): "thicknessMm" is null; it has to be a number'],
  ['a text for a number', [board('12.7')], ', layer 1 (board): "thicknessMm" is "12.7"; it has to be a number'],
  [
    'an unknown key of a layer',
    [{ ...board(12.7), thickness: 3 }],
    ', layer 1 (board): it has no key "thickness"; it has kind, material, thicknessMm and, if wanted, surfaceMassKgM2',
  ],
  [
    'a cavity at the far end',
    [cavity(90, { kind: 'none' }), board(12.7)],
    ', layer 1 (cavity): its link needs a leaf on both sides',
  ],
  [
    'a cavity at the room end',
    [board(12.7), cavity(90, studs)],
    ', layer 2 (cavity): its link needs a leaf on both sides',
  ],
  [
    'two cavities in a row',
    [board(12.7), cavity(90, studs), cavity(50, { kind: 'none' }), board(12.7)],
    ', layer 3 (cavity): it follows another cavity',
  ],
  [
    'compound with one board',
    [board(12.7), { kind: 'damping-compound' }, cavity(90, studs), board(12.7)],
    ', layer 2 (damping compound): it belongs between two boards',
  ],
  [
    'more wool than cavity',
    [board(12.7), cavity(90, studs, { fill: 'mineral-wool', fillMm: 100 }), board(12.7)],
    ', layer 2 (cavity): the fill is 100 mm deep in a cavity of 90 mm',
  ],
  [
    'depth of no wool',
    [board(12.7), cavity(90, studs, { fillMm: 50 }), board(12.7)],
    ', layer 2 (cavity): it gives the depth of a fill but names no fill',
  ],
  [
    'an unknown fill',
    [board(12.7), cavity(90, studs, { fill: 'foam' }), board(12.7)],
    ', layer 2 (cavity): "fill" is "foam"; it has to be "mineral-wool"',
  ],
  [
    'no link',
    [board(12.7), cavity(90, undefined), board(12.7)],
    ', layer 2 (cavity): it needs a "link", {"kind":"none"} where nothing ties the leaves; the kind of a link can be none, wood-stud,',
  ],
  [
    'an unknown link',
    [board(12.7), cavity(90, { kind: 'clips' }), board(12.7)],
    ', layer 2 (cavity): the link "clips" is not known; the kind of a link can be none,',
  ],
  [
    'a link without its spacing',
    [board(12.7), cavity(90, { kind: 'wood-stud' }), board(12.7)],
    ', layer 2 (cavity): the link wood-stud needs "link.spacingMm"',
  ],
  [
    'an unknown frame',
    [board(12.7), cavity(90, { kind: 'resilient-channel', frame: 'steel', channelSpacingMm: 400 }), board(12.7)],
    ', layer 2 (cavity): "link.frame" is "steel"; it has to be "wood-stud", "light-steel-stud"',
  ],
  [
    'no board',
    [{ kind: 'filler', name: 'foam', thicknessMm: 50, surfaceMassKgM2: 1 }],
    ', layer 1 (filler): it touches no board',
  ],
]

describe('leafgap rate', () => {
  it('gives the contract’s keys for every system, through npx, in the order asked', () => {
    const input = JSON.stringify({ systems: [wall(), wall({ id: 2, areaM2: 12, name: 'the same, larger' })] })
    const spoken = npxLeafgap(['rate', '-', '--json'], input)
    expect(spoken).toMatchObject({ code: 0, stderr: '' })
    const { systems } = JSON.parse(spoken.stdout)
    expect(systems.map((system: { id: unknown }) => system.id)).toEqual(['W1', 2])
    for (const system of systems) {
      expect(Object.keys(system)).toEqual(KEYS)
      for (const curve of ['bandsHz', 'tlDb', 'tlSdDb']) {
        expect(system[curve]).toHaveLength(21)
        for (const value of system[curve]) expect(value).toBeTypeOf('number')
      }
      expect(system.bandsHz[0]).toBe(50)
      expect(system.bandsHz[20]).toBe(5000)
      expect(system.plusMinus95).toBeGreaterThanOrEqual(1.96 * 2)
      for (const { hz, cause } of system.resonances) expect([typeof hz, typeof cause]).toEqual(['number', 'string'])
    }
    expect(systems[1].notes.map((note: { code: string }) => note.code)).toContain('area')
  })

  it('leaves numbers unrounded and shows no band above 80 dB', () => {
    const heavy = rateOne({
      id: 'H',
      layers: [board(200, 'concrete'), cavity(200, { kind: 'none' }), board(200, 'concrete')],
    })
    expect(Math.max(...heavy.tlDb)).toBe(80)
    expect(rateOne(wall()).tlDb.some((value: number) => Math.abs(value * 10 - Math.round(value * 10)) > 1e-6)).toBe(
      true,
    )
  })

  it('rates the same wall alike from either side', () => {
    const layers = [board(12.7), cavity(89, studs), board(15.875), board(12.7)]
    const there = rateOne({ id: 'a', layers })
    const back = rateOne({ id: 'a', layers: layers.toReversed() })
    expect(back.stc).toBe(there.stc)
    there.tlDb.forEach((loss: number, band: number) => {
      expect(Math.abs(loss - back.tlDb[band])).toBeLessThan(0.1)
    })
  })

  it('takes every link and material of the contract, and fillers and frames besides', () => {
    const links = [
      { kind: 'none' },
      ...['wood-stud', 'light-steel-stud', 'load-bearing-steel-stud', 'staggered-stud'].map((kind) => ({
        kind,
        spacingMm: 400,
      })),
      { kind: 'resilient-channel', frame: 'wood-stud', channelSpacingMm: 600 },
      { kind: 'resilient-channel', frame: 'masonry', studSpacingMm: 400, channelSpacingMm: 400 },
      { kind: 'sound-clip', frame: 'light-steel-stud', rowSpacingMm: 610, clipSpacingMm: 1219 },
      { kind: 'low-profile-clip', frame: 'load-bearing-steel-stud', rowSpacingMm: 610, clipSpacingMm: 1219 },
      { kind: 'spring-hanger', frame: 'masonry', rowSpacingMm: 610, hangerSpacingMm: 1219 },
      { kind: 'spring-hanger', frame: 'masonry', rowSpacingMm: 610, clipSpacingMm: 1219 },
    ]
    const materials =
      'gypsum-type-x gypsum-regular plywood osb glass laminated-glass steel-sheet concrete concrete-block-hollow brick mass-loaded-vinyl gypsum-concrete'
    const systems = [
      ...links.map((link, i) => ({ id: `L${i}`, layers: [board(12.7), cavity(100, link), board(12.7)] })),
      ...materials.split(' ').map((material) => ({ id: material, layers: [board(10, material)] })),
      {
        id: 'extras',
        layers: [
          { kind: 'filler', name: 'render', thicknessMm: 10, surfaceMassKgM2: 18 },
          { ...board(100, 'brick'), surfaceMassKgM2: 170 },
          cavity(
            90,
            { kind: 'none' },
            {
              fill: 'mineral-wool',
              fillMm: 60,
              fillAgainst: 'room',
              frame: {
                name: 'studs',
                depthMm: 64,
                massKgM2: 2,
                members: { material: 'wood', depthMm: 64, spacingMm: 600 },
              },
            },
          ),
          board(12.7),
          { kind: 'damping-compound' },
          board(12.7),
        ],
      },
    ]
    const spoken = rate({ systems })
    expect(spoken.stderr).toBe('')
    expect(JSON.parse(spoken.stdout).systems).toHaveLength(systems.length)
  })

  it('says of clips and hangers that nothing in print is near, and reads a hanger’s spacing under either name', () => {
    const hung = (spacing: object) =>
      rateOne({
        id: 'W1',
        layers: [
          board(12.7),
          cavity(150, { kind: 'spring-hanger', frame: 'wood-stud', rowSpacingMm: 610, ...spacing }),
          board(12.7),
        ],
      })
    const asHanger = hung({ hangerSpacingMm: 1219 })
    expect(hung({ clipSpacingMm: 1219 })).toEqual(asHanger)
    expect(JSON.stringify(asHanger.notes)).toContain('no published measurement near this build-up')
    const both = { hangerSpacingMm: 1219, clipSpacingMm: 1219 }
    const link = { kind: 'spring-hanger', frame: 'wood-stud', rowSpacingMm: 610, ...both }
    const refused = rate({ systems: [{ id: 'W1', layers: [board(12.7), cavity(150, link), board(12.7)] }] })
    expect(refused.code).toBe(2)
    expect(refused.stderr).toContain('has no key "clipSpacingMm"')
  })
  it('says of a floating layer that what stands on it is left out', () => {
    const mat = { kind: 'filler', name: 'mat', thicknessMm: 10, surfaceMassKgM2: 1, floats: true }
    const floating = rateOne({ id: 'F', layers: [board(150, 'concrete'), mat, board(18, 'plywood')] })
    expect(floating.notes.map((note: { code: string }) => note.code)).toContain('floating-floor')
    expect(floating.tlDb).toEqual(rateOne({ id: 'F', layers: [board(150, 'concrete')] }).tlDb)
  })

  it('prints a table with the likely range beside every STC without --json', () => {
    const spoken = rate({ systems: [wall()] }, [])
    expect(spoken.code).toBe(0)
    expect(spoken.stdout).toMatch(/^W1\n {2}STC \d+, likely \d+-\d+/)
    expect(spoken.stdout).toMatch(/published/)
    for (const line of spoken.stdout.split('\n').filter((text) => /^ {2}(Hz|TL|SD)/.test(text))) {
      expect(line.length).toBeLessThanOrEqual(80)
    }
  })

  it('rates a thousand systems in one go', () => {
    const systems = Array.from({ length: 1000 }, (_, i) => ({
      id: i,
      layers: [board(12.7 + i / 100), cavity(90, studs), board(12.7)],
    }))
    const spoken = rate({ systems })
    expect(JSON.parse(spoken.stdout).systems).toHaveLength(1000)
  })

  it('is as it stands in README.md (REGEN=1 writes it anew)', () => {
    const paper = textOf('README.md')
    const example = /```\n(echo '\{"systems"[^\n]+)\n```\n\nprints\n\n```\n([\s\S]*?)```/.exec(paper)
    const [whole = '', command = '', printed = ''] = example ?? []
    const { stdout, status } = spawnSync('sh', ['-c', command], { encoding: 'utf8' })
    expect(status).toBe(0)
    expect(stdout).toContain('STC')
    if (process.env['REGEN']) {
      writeFileSync(
        'README.md',
        paper.replace(whole, () => whole.replace(`\n${printed}\`\`\``, () => `\n${stdout}\`\`\``)),
      )
    } else {
      expect(printed).toBe(stdout)
    }
  })
})

describe('leafgap rate refuses', () => {
  it.each<[string, unknown, RegExp]>([
    ['what is no JSON', '[1', /^leafgap: standard input is not readable JSON/],
    ['nothing', '', /^leafgap: standard input is empty/],
    ['NaN', '{"systems":[{"id":1,"layers":[{"thicknessMm":NaN}]}]}', /NaN and Infinity are not numbers in JSON/],
    ['a list', [], /an object with a list of systems/],
    ['no systems', { systems: [] }, /there are no systems/],
    ['a system that is none', { systems: [null] }, /^leafgap: system 1: a system has to be an object/],
    ['no id', { systems: [{ layers: [board(12.7)] }] }, /^leafgap: system 1: it needs an "id"/],
    [
      'an id twice',
      { systems: [wall(), wall()] },
      /^leafgap: system W1 \(number 2\): its id is that of system number 1/,
    ],
    ['an unknown key', { systems: [wall({ area: 3 })] }, /^leafgap: system W1: "area" is not a key of a system/],
    [
      'an area of 0',
      { systems: [wall({ areaM2: 0 })] },
      /^leafgap: system W1: "areaM2" is 0; it has to be a number above 0/,
    ],
    ['no layers', { systems: [{ id: 'W1' }] }, /^leafgap: system W1: it needs "layers"/],
    ['an empty list of layers', { systems: [wall({ layers: [] })] }, /^leafgap: system W1: there are no layers/],
  ])('%s', (_, input, sentence) => {
    const spoken = rate(input)
    expect(spoken).toMatchObject({ code: 2, stdout: '' })
    expect(spoken.stderr).toMatch(sentence)
  })

  describe('in a layer', () => {
    // All in one run: every problem of every system is told, whatever else is wrong.
    const systems = BAD_LAYERS.map(([, layers], index) => ({ id: `S${index}`, layers }))
    const spoken = rate({ systems })

    it('with nothing on standard output', () => {
      expect(spoken).toMatchObject({ code: 2, stdout: '' })
      for (const line of spoken.problems) expect(line).toMatch(/^leafgap: system S\d+, layer \d/)
    })

    it.each(BAD_LAYERS.map(([what, , sentence], index) => [what, index, sentence] as const))(
      '%s',
      (_, index, sentence) => {
        expect(spoken.stderr).toContain(`leafgap: system S${index}${sentence}`)
      },
    )
  })

  it('everything that is wrong at once, one line each, and nothing else', () => {
    const bad = {
      id: 'B',
      layers: [board(-1), cavity(0, { kind: 'wood-stud' }, { fill: 'foam' }), board(12.7, 'chipboard')],
    }
    const spoken = rate({ systems: [wall(), bad, { id: 'C', layers: [{ kind: 'x' }, board(0)] }] })
    expect(spoken).toMatchObject({ code: 2, stdout: '' })
    expect(spoken.problems.map((line) => line.replace(/^leafgap: (system \w+, layer \d+).*$/, '$1'))).toEqual([
      'system B, layer 1',
      'system B, layer 2',
      'system B, layer 2',
      'system B, layer 2',
      'system B, layer 3',
      'system C, layer 1',
      'system C, layer 2',
    ])
  })

  it('options it does not have', () => {
    expect(leafgap(['rate', '-', '--out', 'x'])).toMatchObject({
      code: 2,
      stdout: '',
      stderr: 'leafgap: rate takes no --out\n',
    })
  })
})

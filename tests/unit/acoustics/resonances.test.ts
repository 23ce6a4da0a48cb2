import { describe, expect, it } from 'vitest'
import { predictLoss } from '#acoustics/layered/predict.ts'
import type { LayeredSystem, Link } from '#acoustics/layered/system.ts'
import { cavityOf, leafOf } from '../../support/acoustics.ts'

const THIN = leafOf('gypsum-regular', 12.7)
const TWO = leafOf('gypsum-type-x', 15.875, 2)
const BLOCK = leafOf('concrete-block-hollow', 190)
const PANE = leafOf('glass', 6)
const STUDS = { kind: 'wood-stud', spacingMm: 406.4 } as const
const CHANNEL: Link = { kind: 'resilient-channel', frame: 'wood-stud', studSpacingMm: 406.4, channelSpacingMm: 609.6 }
const CLIPS: Link = { kind: 'sound-clip', frame: 'wood-stud', rowSpacingMm: 609.6, clipSpacingMm: 1219.2 }
const HANGERS: Link = { kind: 'spring-hanger', frame: 'masonry', rowSpacingMm: 1219.2, hangerSpacingMm: 1219.2 }

const DOUBLE: LayeredSystem = { leaves: [THIN, THIN], cavities: [cavityOf(89, 0, STUDS)] }
const TRIPLE: LayeredSystem = { leaves: [THIN, THIN, TWO], cavities: [cavityOf(89, 0, STUDS), cavityOf(114, 89)] }
const MAIN: Readonly<Record<string, LayeredSystem>> = {
  single: { leaves: [TWO], cavities: [] },
  double: DOUBLE,
  shallow: { leaves: [THIN, THIN, TWO], cavities: [cavityOf(89, 89, STUDS), cavityOf(13, 0, CHANNEL)] },
  triple: TRIPLE,
  four: { leaves: [THIN, THIN, THIN, TWO], cavities: [cavityOf(89, 0), cavityOf(25, 0), cavityOf(89, 89)] },
  glass: { leaves: [PANE, leafOf('glass', 8)], cavities: [cavityOf(12, 0)] },
  lined: { leaves: [BLOCK, TWO], cavities: [cavityOf(114, 89)] },
  channel: { leaves: [THIN, TWO], cavities: [cavityOf(102, 89, CHANNEL)] },
  clips: { leaves: [THIN, TWO], cavities: [cavityOf(130, 89, CLIPS)] },
  hangers: { leaves: [leafOf('concrete', 150), TWO], cavities: [cavityOf(254, 90, HANGERS)] },
}

const named = (system: LayeredSystem) => predictLoss(system, { quality: 'drag' }).resonances
const gapsOf = (system: LayeredSystem) => named(system).filter(({ kind }) => kind !== 'coincidence')

describe.each(Object.entries(MAIN))('resonances of a %s construction', (_, system) => {
  const resonances = named(system)

  it('rise in frequency, each with a cause and a remedy of its own', () => {
    const hz = resonances.map((resonance) => resonance.hz)
    expect(hz).toEqual(hz.toSorted((a, b) => a - b))
    expect(hz.every((value) => value > 5 && value <= 5623)).toBe(true)
    expect(new Set(resonances.map(({ cause }) => cause)).size).toBe(resonances.length)
    for (const { cause, remedy } of resonances) {
      expect(cause).toMatch(/^[a-z].*[^.]$/)
      expect(remedy).toMatch(/^[A-Z].*\.$/)
    }
  })

  it('name every gap once, with its depth', () => {
    const told = gapsOf(system).map(({ cause }) => /gap (\d) of (\d+) mm/.exec(cause)?.slice(1, 3).map(Number))
    const gaps = system.cavities.map(({ depthMm }, i) => [i + 1, Math.round(depthMm)])
    expect(told.toSorted((a, b) => (a?.[0] ?? 0) - (b?.[0] ?? 0))).toEqual(gaps)
  })
})

describe('what a resonance says', () => {
  it('tells boards by their leaves, equal ones once', () => {
    expect(named(DOUBLE).map(({ cause }) => cause)).toEqual([
      'gap 1 of 89 mm resonates: its air is the spring between leaves 1 and 2',
      'coincidence of gypsum board, regular, 12.7 mm, in leaves 1 and 2',
    ])
  })

  it('tells boards that differ only by what rides on them once', () => {
    const [sheet] = leafOf('plywood', 19).sheets
    const laden = { sheets: [{ ...sheet!, surfaceMassKgM2: 11.5 }, sheet!], dampedJoints: [] }
    expect(named({ leaves: [laden], cavities: [] }).map(({ cause }) => cause)).toEqual([
      'coincidence of plywood, 19 mm, in leaf 1',
    ])
  })

  it('names both resonances of a triple leaf as its penalty, and the one there would be without it', () => {
    const both = gapsOf(TRIPLE)
    expect(both).toHaveLength(2)
    for (const { cause, remedy } of both) {
      expect(cause).toContain('the middle leaf splits one deep gap into two shallow ones')
      expect(remedy).toContain('Take the inner leaf away')
    }
    // 59.925 sqrt((7.81 + 22.23) / (0.2157 x 7.81 x 22.23)), both gaps and the board between them as one: own arithmetic.
    expect(both[0]?.cause).toContain('one resonance at 54 Hz')
    expect(both[1]!.hz).toBeGreaterThan(1.5 * 54)
    expect(gapsOf(MAIN['lined']!)[0]?.cause).not.toContain('triple')
  })

  it('takes no masonry core and no subfloor for a leaf to be spared', () => {
    const core: LayeredSystem = { leaves: [TWO, BLOCK, TWO], cavities: [cavityOf(65, 65), cavityOf(65, 65)] }
    const floor: LayeredSystem = {
      leaves: [THIN, leafOf('plywood', 19), leafOf('plywood', 19, 2)],
      cavities: [cavityOf(235, 0, STUDS), cavityOf(12, 0, { kind: 'resilient-layer', dynamicStiffnessMNm3: 30 })],
    }
    for (const system of [core, floor]) {
      for (const { cause, remedy } of gapsOf(system)) expect(cause + remedy).not.toMatch(/middle leaf|inner leaf/)
    }
  })

  it('warns of a shallow gap', () => {
    expect(gapsOf(MAIN['shallow']!).at(-1)?.cause).toMatch(/^shallow gap 2 of 13 mm resonates/)
  })

  it('counts clips, channels and hangers as springs beside the air', () => {
    const bare: LayeredSystem = { leaves: [THIN, TWO], cavities: [cavityOf(130, 89)] }
    const [air, clips] = [gapsOf(bare)[0]!, gapsOf(MAIN['clips']!)[0]!]
    expect(clips.hz).toBeGreaterThan(air.hz)
    // Two clips' worth: 2e5 N/m on 0.743 m2 under 7.81 and 22.23 kg/m2, own arithmetic: 34 Hz alone.
    expect(clips.cause).toContain('its air and its clips together (the clips alone: 34 Hz)')
    expect(gapsOf(MAIN['channel']!)[0]?.cause).toContain('its air and its channels together')
    // A ceiling of 22 kg/m2 on 1e4 N/m each 1.49 m2: 2.8 Hz, with a slab of 345 kg/m2 above it 2.9.
    expect(gapsOf(MAIN['hangers']!)[0]?.cause).toContain('the hangers alone: 3 Hz')
  })

  it('lies within a band of where the curve dips', () => {
    for (const name of ['clips', 'glass'] as const) {
      const { lossDb, resonances } = predictLoss(MAIN[name]!, { quality: 'plot' })
      const hz = resonances.find(({ kind }) => kind === 'mass-air-mass')!.hz
      const band = Math.round(10 * Math.log10(hz)) - 17
      const lowest = lossDb.indexOf(Math.min(...lossDb.slice(0, Math.max(8, band + 3))))
      expect(Math.abs(lowest - band)).toBeLessThanOrEqual(1)
    }
  })
})

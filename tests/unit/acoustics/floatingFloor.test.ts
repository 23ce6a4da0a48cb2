import { describe, expect, it } from 'vitest'
import { checkSystem } from '#acoustics/layered/check.ts'
import { creditedGain } from '#acoustics/layered/floatingFloor.ts'
import { lossCurve } from '#acoustics/layered/lossCurve.ts'
import { METHOD } from '#acoustics/layered/method.ts'
import { predictLoss } from '#acoustics/layered/predict.ts'
import { type LayeredSystem, reverseSystem } from '#acoustics/layered/system.ts'
import { RW, rate } from '#acoustics/rating.ts'
import { cavityOf, leafOf, limpLeaf } from '../../support/acoustics.ts'

const SLAB = leafOf('concrete', 150)
const SCREED = leafOf('concrete', 65)
const DECK = leafOf('plywood', 19, 2)

const onLayer = (stiffness: number, floor = SCREED, base = SLAB): LayeredSystem => ({
  leaves: [base, floor],
  cavities: [cavityOf(25, 0, { kind: 'resilient-layer', dynamicStiffnessMNm3: stiffness })],
})
const onMounts = (stiffness: number, depthMm: number, floor = SCREED): LayeredSystem => ({
  leaves: [SLAB, floor],
  cavities: [cavityOf(depthMm, 0, { kind: 'floor-mounts', dynamicStiffnessMNm3: stiffness, spacingMm: 600 })],
})
const curve = (system: LayeredSystem) => lossCurve(system, 10, 'plot', METHOD)
const rw = (system: LayeredSystem) => rate(predictLoss(system, { quality: 'plot' }).lossDb, RW).value

describe('a floor on a resilient layer', () => {
  it("bounces at 160 sqrt(s' / m'), the base at rest", () => {
    const heavy = limpLeaf(1e5)
    const [mode] = predictLoss(onLayer(10, limpLeaf(100), heavy), { quality: 'drag' }).resonances
    // WE-17 of our worked examples: 50.6 Hz for 10 MN/m3 under 100 kg/m2, with 160; exactly 1000 / (2 pi) it is 50.3.
    expect(mode!.hz).toBeCloseTo((1000 / (2 * Math.PI)) * Math.sqrt(10 / 100), 1)
    expect(mode).toMatchObject({ kind: 'mass-spring' })
    expect(mode!.cause).toBe('the floating floor bounces on its resilient layer, gap 1 of 25 mm')
  })

  it('passes all of the force well below that: both leaves move as one', () => {
    const stiff = curve(onLayer(2000, limpLeaf(20), limpLeaf(20)))
    const one = curve({ leaves: [limpLeaf(40)], cavities: [] })
    // 0.2 dB: at 50 Hz the spring of 2000 MN/m3 yields by a thousandth of the motion.
    expect(Math.abs(stiff[0]! - one[0]!)).toBeLessThan(0.2)
  })

  it('gains 12 dB an octave above it and loses around it', () => {
    const [soft, hard] = [
      curve(onLayer(10, limpLeaf(50), limpLeaf(50))),
      curve(onLayer(40, limpLeaf(50), limpLeaf(50))),
    ]
    // Two octaves in stiffness are one in frequency; limp leaves, far above both resonances: 12 dB for each octave.
    expect(soft[14]! - hard[14]!).toBeGreaterThan(11)
    expect(soft[14]! - hard[14]!).toBeLessThan(13)
    expect(soft[20]! - soft[17]!).toBeGreaterThan(16)
  })

  it('on mounts stands on the air as well: a higher gap lowers it, softer mounts help little over a shallow one', () => {
    const at = (system: LayeredSystem) => predictLoss(system, { quality: 'drag' }).resonances[0]!
    expect(at(onMounts(1, 100)).hz).toBeLessThan(at(onMounts(1, 50)).hz)
    expect(at(onMounts(0.1, 12)).hz / at(onMounts(1, 12)).hz).toBeGreaterThan(0.94)
    expect(at(onMounts(1, 50)).cause).toContain('on its mounts and the air between them, gap 1 of 50 mm')
  })

  it('is the same from both sides', () => {
    for (const system of [onLayer(10), onMounts(1, 50), onLayer(30, DECK)]) {
      const [there, back] = [system, reverseSystem(system)].map((s) => predictLoss(s, { quality: 'drag' }).lossDb)
      there!.forEach((value, band) => {
        expect(Math.abs(value - back![band]!)).toBeLessThan(1e-6)
      })
    }
  })
})

describe('what it is believed', () => {
  it('is held to what the standard credits it with on concrete', () => {
    const { notes } = predictLoss(onLayer(10), { quality: 'plot' })
    expect(notes.map((note) => note.code)).toEqual(['held-to-standard', 'no-published-measurement'])
    expect(rw(onLayer(10)) - rw({ leaves: [SLAB], cavities: [] })).toBeLessThanOrEqual(15)
    expect(rw(onLayer(5))).toBeGreaterThanOrEqual(rw(onLayer(20)))
  })

  it('is left alone where the calculation says less, and on joists, where that table does not reach', () => {
    const light = predictLoss(onMounts(0.35, 51, DECK), { quality: 'plot' })
    expect(light.notes.map((note) => note.code)).not.toContain('held-to-standard')
    const { leaves, cavities } = onLayer(10, SCREED, DECK)
    const joists = cavityOf(235, 0, { kind: 'wood-stud', spacingMm: 406.4 })
    const onJoists: LayeredSystem = {
      leaves: [leafOf('gypsum-type-x', 15.875), ...leaves],
      cavities: [joists, ...cavities],
    }
    const onBoards = predictLoss(onJoists, { quality: 'plot' })
    expect(onBoards.notes.map((note) => note.code)).not.toContain('held-to-standard')
  })

  it.each([
    { resonance: 20, base: 54, gain: 74.4 - 20 * Math.log10(30) - 27 },
    { resonance: 80, base: 54, gain: 74.4 - 20 * Math.log10(80) - 27 },
    { resonance: 160, base: 60, gain: 74.4 - 20 * Math.log10(160) - 30 },
    { resonance: 200, base: 54, gain: -1 },
    { resonance: 500, base: 54, gain: -9 },
    { resonance: 1000, base: 54, gain: -10 },
    { resonance: 4000, base: 54, gain: -5 },
  ])('credits $gain dB at $resonance Hz on Rw $base', ({ resonance, base, gain }) => {
    expect(creditedGain(resonance, base)).toBeCloseTo(gain, 9)
  })

  it('is a wide guess, said so', () => {
    const prediction = predictLoss(onMounts(1, 50), { quality: 'drag' })
    expect(prediction.family).toBe('floating-floor')
    expect(prediction.spreadStcDb).toBeGreaterThanOrEqual(6)
    expect(prediction.notes.map((note) => note.code)).toContain('no-published-measurement')
  })

  it('is refused with a sentence where the stiffness cannot be', () => {
    for (const stiffness of [0, -3, 1e6, Number.NaN]) {
      const checked = checkSystem(onLayer(stiffness))
      expect(checked.ok ? [] : checked.error.map(({ message }) => message)).toEqual([
        `Cavity 1 has a dynamic stiffness of ${stiffness} MN/m3; it must be between 0.01 and 2000 MN/m3.`,
      ])
    }
  })
})

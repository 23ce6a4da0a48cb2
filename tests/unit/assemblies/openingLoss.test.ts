import { describe, expect, it } from 'vitest'
import { BANDS_HZ } from '#acoustics/bands.ts'
import { flatCurve, octaveLoss } from '#acoustics/curve.ts'
import { contourCurve, stcOf } from '#assemblies/openingCurves.ts'
import { inOpening, made, refusedSound, soundOf } from '../../support/openings.ts'

const DOOR = inOpening('door')
const WALL = { lossDb: flatCurve(50), sdDb: flatCurve(6) }
const codes = (sound: ReturnType<typeof soundOf>) => sound.notes.map(({ code }) => code)

describe('what comes through an opening', () => {
  it('reads printed octaves back as they are printed, and marks what it extends below them', () => {
    const sound = soundOf(made('door-metal-filled'), DOOR)
    expect(octaveLoss(sound.lossDb).map((loss) => Number(loss.toFixed(9)))).toEqual([20, 26, 34, 40, 48, 44, 52])
    expect(sound.assumedOctaves).toEqual(['63'])
    expect(sound.sdDb[0]!).toBeGreaterThan(sound.sdDb[5]!)
    expect(sound.basis).toBe('published')
    expect(codes(sound)).toEqual(['extended-below-125'])
  })

  it('takes a printed 63 Hz as it is, however low', () => {
    const sound = soundOf(made('door-hollow-core-cracks'), DOOR)
    expect(octaveLoss(sound.lossDb)[0]).toBeCloseTo(1, 9)
    expect(sound.assumedOctaves).toEqual([])
  })

  it('lays one number along the contour so that it has that number again, never below 0 dB', () => {
    for (const stc of [5, 15, 26, 40, 50]) {
      const { lossDb } = contourCurve(stc, 3)
      expect(stcOf(lossDb)).toBe(stc)
      expect(Math.min(...lossDb)).toBeGreaterThanOrEqual(0)
    }
    const sound = soundOf(made('vehicle-roll-up'), inOpening('vehicle-door', { widthMm: 2438, heightMm: 2134 }))
    expect(sound.basis).toBe('assumed')
    expect(sound.assumedOctaves).toHaveLength(7)
    expect(codes(sound)).toContain('one-number')
  })

  it('lets through all that meets a hole', () => {
    const sound = soundOf(made('vent-open'), inOpening('vent', { widthMm: 200, heightMm: 200 }))
    expect(sound.lossDb).toEqual(flatCurve(0))
    expect(sound.stc).toBeNull()
    expect(sound.likely).toBeNull()
  })

  it('closes as the wall is, less what a plug loses, and knows nothing where the wall has no figure', () => {
    const window = inOpening('window', { wall: WALL })
    expect(soundOf(made('infill'), window).lossDb).toEqual(flatCurve(50))
    expect(soundOf(made('plug'), window).lossDb).toEqual(flatCurve(45))
    expect(soundOf(made('plug'), window).sdDb[0]).toBeGreaterThan(6)
    expect(refusedSound(made('plug'), inOpening('window'))).toMatch(/that wall has no rating/)
    expect(refusedSound(made('vent-duct'), inOpening('vent'))).toMatch(/that wall has no rating/)
  })

  it('says in a sentence what it does not know, never 0 dB', () => {
    expect(refusedSound(made('door-of-gold'), DOOR)).toMatch(
      /no opening type "door-of-gold": choose again what this door is\./,
    )
    expect(refusedSound(made('window-pane-4'), DOOR)).toMatch(/does not stand in a door/)
    expect(refusedSound(made('window-sash-4', 'undercut'), inOpening('window'))).toMatch(/no gap over the floor/)
  })

  it('calculates panes as they are chosen, and calls nothing published that was measured with others', () => {
    const window = inOpening('window', { widthMm: 1200, heightMm: 900 })
    const usual = soundOf(made('window-pane-pair'), window)
    const panes = {
      outer: { thicknessMm: 6, isLaminated: false },
      gapMm: 50,
      inner: { thicknessMm: 6, isLaminated: false },
    }
    const nearer = soundOf(made('window-pane-pair', 'good', { panes }), window)
    expect(usual.publishedWords).toMatch(/^46, Harris/)
    expect(nearer.publishedWords).toBeNull()
    expect(nearer.stc!).toBeLessThan(usual.stc!)
    expect(usual.basis).toBe('calculated')
    expect(codes(usual)).toEqual(['panes-alone'])
  })
})

describe('seals', () => {
  it('leave nothing open as tested, a gap all round when worn, and more with a leaf that is cut off', () => {
    const leaks = (['good', 'worn', 'undercut'] as const).map((seal) => soundOf(made('door-solid-core', seal), DOOR))
    expect(leaks[0]!.seal).toBeNull()
    // 4 mm round 5.88 m; 4 mm round three sides and 10 mm under 0.9 m
    expect(leaks[1]!.seal!.areaM2).toBeCloseTo(0.02352, 9)
    expect(leaks[2]!.seal!.areaM2).toBeCloseTo((4 * (5880 - 900) + 10 * 900) / 1e6, 9)
    expect(leaks.map(({ stc }) => stc)).toEqual([27, 20, 18])
    expect(leaks[1]!.publishedWords).toBeNull()
    expect(leaks[1]!.lossDb).toEqual(leaks[0]!.lossDb)
    for (const { seal } of leaks) if (seal) expect(Math.min(...seal.lossDb)).toBeGreaterThanOrEqual(0)
  })

  it('cannot wear where the printed figure has the cracks in it, nor where nothing opens', () => {
    expect(soundOf(made('door-hardwood-cracks', 'worn'), DOOR).seal).toBeNull()
    expect(soundOf(made('door-hardwood-cracks', 'undercut'), DOOR).seal!.areaM2).toBeCloseTo(0.009, 9)
    expect(soundOf(made('window-pane-6', 'worn'), inOpening('window')).seal).toBeNull()
  })

  it('never let through more than the whole opening', () => {
    const slot = inOpening('door', { widthMm: 6, heightMm: 6 })
    const { seal } = soundOf(made('door-solid-core', 'worn'), slot)
    expect(seal!.areaM2).toBeLessThanOrEqual(slot.areaM2)
  })

  it('of a pair are in its two leaves: one worn door of two costs less than both', () => {
    const stc = (...seals: readonly ('good' | 'worn')[]) => {
      const second = { type: 'door-solid-core', seal: seals[1]! }
      const sound = soundOf(made('pair-solid-core', seals[0], { second }), DOOR)
      expect(sound.seal).toBeNull()
      return sound.stc!
    }
    expect(stc('good', 'worn')).toBeLessThan(stc('good', 'good'))
    expect(stc('worn', 'worn')).toBeLessThan(stc('good', 'worn'))
    expect(stc('good', 'worn')).toBe(stc('worn', 'good'))
  })
})

describe('two doors', () => {
  it('take the second like the first unless another is named', () => {
    const same = soundOf(made('pair-solid-core', 'worn'), DOOR)
    const named = soundOf(made('pair-solid-core', 'worn', { second: { type: 'door-solid-core', seal: 'worn' } }), DOOR)
    expect(named.lossDb).toEqual(same.lossDb)
    const better = soundOf(
      made('pair-solid-core', 'good', { second: { type: 'door-metal-filled', seal: 'good' } }),
      DOOR,
    )
    expect(better.stc!).toBeGreaterThan(soundOf(made('pair-solid-core'), DOOR).stc!)
  })

  it('stand as far apart as they are drawn, and gain with it', () => {
    const stc = (pairGapMm: number | null) => soundOf(made('pair-solid-core'), { ...DOOR, pairGapMm }).stc!
    expect(stc(80)).toBeLessThan(stc(null))
    expect(stc(600)).toBeGreaterThan(stc(null))
    expect(soundOf(made('pair-solid-core'), { ...DOOR, pairGapMm: 230 }).publishedWords).not.toBeNull()
    expect(soundOf(made('pair-solid-core'), { ...DOOR, pairGapMm: 231 }).publishedWords).toBeNull()
  })

  it('can be one leaf with another behind it where a lobby door is drawn, and are asked how far apart where not', () => {
    const behind = made('door-solid-core', 'good', { second: { type: 'door-metal-hollow', seal: 'good' } })
    expect(refusedSound(behind, DOOR)).toMatch(/how far apart the two doors stand/)
    expect(refusedSound(behind, { ...DOOR, pairGapMm: 0 })).toMatch(/stand in one place/)
    const sound = soundOf(behind, { ...DOOR, pairGapMm: 150 })
    expect(sound.basis).toBe('calculated')
    expect(sound.stc!).toBeGreaterThan(soundOf(made('door-solid-core'), DOOR).stc!)
  })

  it('count as one, and say so, while nobody has said what the drawn lobby door is', () => {
    const sound = soundOf(made('door-solid-core'), { ...DOOR, pairGapMm: 150 })
    expect(codes(sound)).toContain('lobby-not-said')
    expect(sound.lossDb).toEqual(soundOf(made('door-solid-core'), DOOR).lossDb)
  })

  it('say that what goes round them decides, where they are told to be very good', () => {
    expect(codes(soundOf(made('pair-metal-filled'), DOOR))).toContain('frames-decide')
    expect(codes(soundOf(made('pair-solid-core'), DOOR))).not.toContain('frames-decide')
  })

  it('refuse a pair as a leaf, and a leaf that is not in the catalogue', () => {
    const pair = made('pair-solid-core', 'good', { second: { type: 'pair-hollow-core', seal: 'good' } })
    expect(refusedSound(pair, DOOR)).toMatch(/cannot be one leaf of another pair/)
    const none = made('pair-solid-core', 'good', { second: { type: 'gone', seal: 'good' } })
    expect(refusedSound(none, DOOR)).toMatch(/no opening type "gone"/)
  })
})

describe('every figure', () => {
  it('is 21 finite bands with their spread', () => {
    const sound = soundOf(made('lobby-solid-core', 'undercut'), DOOR)
    expect(sound.lossDb).toHaveLength(BANDS_HZ.length)
    expect(sound.sdDb.every((sd) => sd > 0)).toBe(true)
    expect(sound.likely![0]).toBeLessThan(sound.stc!)
    expect(sound.likely![1]).toBeGreaterThan(sound.stc!)
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { OCTAVES_HZ } from '#acoustics/bands.ts'
import { filterOctaves, octaveLevelsOf, shapeOctaves } from '#acoustics/listen/octaveBands.ts'
import { whiteNoise } from '#acoustics/listen/random.ts'

const RATE = 24_000

const LENGTH = 2 ** 15

const rms = (loop: ArrayLike<number>) => Math.hypot(...Array.from(loop)) / Math.sqrt(loop.length)

/** A tone with a whole number of turns, so that it is seamless. */
function tone(hz: number): Float64Array {
  const turns = Math.round((hz * LENGTH) / RATE)
  return Float64Array.from({ length: LENGTH }, (_, i) => Math.sin((2 * Math.PI * turns * i) / LENGTH))
}

describe('the octave filter', () => {
  const gains = [-30, -12, 0, 6, -20, -45, -3]

  it.each(OCTAVES_HZ.map((hz, octave) => ({ hz, gain: gains[octave]! })))(
    'changes a tone of $hz Hz by $gain dB',
    ({ hz, gain }) => {
      const changed = 20 * Math.log10(rms(filterOctaves(tone(hz), RATE, gains)) / rms(tone(hz)))
      expect(Math.abs(changed - gain)).toBeLessThanOrEqual(0.5)
    },
  )

  it('silences octaves of which nothing is known', () => {
    const silent = filterOctaves(tone(1000), RATE, [0, 0, 0, 0, null, 0, 0])
    expect(rms(silent)).toBeLessThan(1e-6)
    expect(
      rms(
        filterOctaves(
          tone(1000),
          RATE,
          OCTAVES_HZ.map(() => null),
        ),
      ),
    ).toBe(0)
  })

  it('shifts nothing in time', () => {
    const before = tone(500)
    const after = filterOctaves(before, RATE, [-20, -20, -20, 0, -20, -20, -20])
    expect(after[37]! / before[37]!).toBeCloseTo(1, 1)
  })
})

describe('levels by octave', () => {
  it('are those asked for, to 0.1 dB, however steep', () => {
    const steep = fc.array(fc.double({ min: -18, max: 18, noNaN: true }), { minLength: 7, maxLength: 7 })
    fc.assert(
      fc.property(steep, (steps) => {
        let level = -40
        const levels = steps.map((step) => {
          level += step
          return level
        })
        octaveLevelsOf(shapeOctaves(whiteNoise(LENGTH, 1), RATE, levels), RATE).forEach((reached, octave) => {
          expect(Math.abs(reached - levels[octave]!)).toBeLessThan(0.1)
        })
      }),
      { numRuns: 25 },
    )
  })

  it('of a full tone are 3 dB under full scale', () => {
    expect(octaveLevelsOf(tone(1000), RATE)[4]).toBeCloseTo(-3.01, 2)
  })
})

import { describe, expect, it } from 'vitest'
import { toLoop, toSpectrum } from '#acoustics/listen/fourier.ts'
import { whiteNoise } from '#acoustics/listen/random.ts'

describe('the transform', () => {
  it('and back gives the loop again', () => {
    const loop = whiteNoise(1024, 3)
    toLoop(toSpectrum(loop)).forEach((value, i) => {
      expect(value).toBeCloseTo(loop[i]!, 9)
    })
  })

  it('keeps the energy (Parseval)', () => {
    const loop = whiteNoise(256, 9)
    const { re, im } = toSpectrum(loop)
    const energy = re.reduce((sum, value, bin) => sum + value ** 2 + im[bin]! ** 2, 0) / 256
    expect(energy).toBeCloseTo(
      loop.reduce((sum, value) => sum + value ** 2, 0),
      6,
    )
  })

  it('refuses a loop whose length is no power of two', () => {
    expect(() => toSpectrum(new Float64Array(100))).toThrow(/power of two/)
  })
})

import { describe, expect, it } from 'vitest'
import { octaveLevelsOf } from '#acoustics/listen/octaveBands.ts'
import { VOICES, voiceLoop } from '#acoustics/listen/voices.ts'

const RATE = 24_000

const LENGTH = 2 ** 15

const rms = (loop: ArrayLike<number>) => Math.hypot(...Array.from(loop)) / Math.sqrt(loop.length)

describe('voices', () => {
  it.each(VOICES)('%s is the same every time, seamless, and has something in every octave', (voice) => {
    const loop = voiceLoop(voice, LENGTH, RATE, 5)
    expect(voiceLoop(voice, LENGTH, RATE, 5)).toEqual(loop)
    expect(loop.every(Number.isFinite)).toBe(true)
    const levels = octaveLevelsOf(loop, RATE)
    expect(Math.min(...levels)).toBeGreaterThan(Math.max(...levels) - 45)
  })

  it('differ with their seed', () => {
    expect(voiceLoop('steady', 64, RATE, 1)).not.toEqual(voiceLoop('steady', 64, RATE, 2))
  })

  it('of a kit and of talk come and go, and steady noise does not', () => {
    const crest = (voice: (typeof VOICES)[number]) => {
      const loop = voiceLoop(voice, LENGTH, RATE, 5)
      const parts = Array.from({ length: 64 }, (_, i) => rms(loop.slice((i * LENGTH) / 64, ((i + 1) * LENGTH) / 64)))
      return Math.max(...parts) / Math.min(...parts)
    }
    expect(crest('kit')).toBeGreaterThan(4)
    expect(crest('speech')).toBeGreaterThan(4)
    expect(crest('steady')).toBeLessThan(1.5)
  })
})

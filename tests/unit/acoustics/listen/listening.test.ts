import { describe, expect, it } from 'vitest'
import { OCTAVES_HZ } from '#acoustics/bands.ts'
import { ncCurve } from '#acoustics/criteria.ts'
import { FULL_SCALE_DB, LOUDEST_DBA, SAMPLE_RATE_HZ, TALK_DB, TALK_DBA } from '#acoustics/listen/calibration.ts'
import { type Listening, listenTo } from '#acoustics/listen/listening.ts'
import { octaveLevelsOf } from '#acoustics/listen/octaveBands.ts'
import { VOICES } from '#acoustics/listen/voices.ts'
import { A_WEIGHTS, weightedLevel } from '#acoustics/weighting.ts'

const KIT = [100, 103, 101, 100, 98, 97, 95]

const BEDROOM = [62, 53, 41, 30, 25, 20, 12]

const peak = (loop: ArrayLike<number>) => Array.from(loop).reduce((most, value) => Math.max(most, Math.abs(value)), 0)

/** Levels of what is played, as sound. */
function heardLevels(samples: Float32Array): readonly number[] {
  return octaveLevelsOf(samples, SAMPLE_RATE_HZ).map((level) => level + FULL_SCALE_DB)
}

describe('what is played', () => {
  const voices = VOICES.map((voice) => ({ voice }))

  it('sets the volume by talk at one metre, as loud as it is', () => {
    const { samples, reducedDb, levelA } = listenTo({ kind: 'talk' })
    expect(reducedDb).toBe(0)
    expect(levelA).toBeCloseTo(TALK_DBA, 1)
    // ANSI S3.5 at second hand gives 59.5 dBA with 8000 Hz in it.
    expect(TALK_DBA).toBeCloseTo(59.5, 1)
    const heard = heardLevels(samples)
    TALK_DB.forEach((level, octave) => {
      if (level !== null) expect(heard[octave]).toBeCloseTo(level, 1)
    })
  })

  it.each(voices)('has the levels of the receiver with $voice, as loud as they are', ({ voice }) => {
    const { samples, reducedDb } = listenTo({ kind: 'voice', voice, levelsDb: BEDROOM })
    expect(reducedDb).toBe(0)
    heardLevels(samples).forEach((level, octave) => {
      expect(Math.abs(level - BEDROOM[octave]!)).toBeLessThan(0.2)
    })
  })

  it.each(voices)('turns the room down by whole dB with $voice, and says by how many', ({ voice }) => {
    const { samples, reducedDb, levelA } = listenTo({ kind: 'voice', voice, levelsDb: KIT })
    expect(Number.isInteger(reducedDb)).toBe(true)
    expect(levelA).toBeCloseTo(weightedLevel(KIT, A_WEIGHTS)!, 1)
    expect(levelA! - reducedDb).toBeLessThanOrEqual(LOUDEST_DBA)
    expect(peak(samples)).toBeLessThanOrEqual(0.98)
    heardLevels(samples).forEach((level, octave) => {
      expect(Math.abs(level + reducedDb - KIT[octave]!)).toBeLessThan(0.2)
    })
  })

  it('adds the background to what comes through, by energy', () => {
    const listening: Listening = { kind: 'voice-and-background', voice: 'kit', levelsDb: BEDROOM, backgroundNc: 30 }
    const heard = heardLevels(listenTo(listening).samples)
    const both = BEDROOM.map((level, octave) => 10 * Math.log10(10 ** (level / 10) + 10 ** (ncCurve(30)[octave]! / 10)))
    // Two loops that know nothing of each other still share a little by chance.
    heard.forEach((level, octave) => {
      expect(Math.abs(level - both[octave]!)).toBeLessThan(0.7)
    })
  })

  it('plays the background alone on its curve', () => {
    heardLevels(listenTo({ kind: 'background', backgroundNc: 20 }).samples).forEach((level, octave) => {
      expect(Math.abs(level - ncCurve(20)[octave]!)).toBeLessThan(0.2)
    })
  })

  it('plays nothing where nothing is known', () => {
    const none = OCTAVES_HZ.map(() => null)
    const { samples, levelA } = listenTo({ kind: 'voice', voice: 'kit', levelsDb: none })
    expect(peak(samples)).toBe(0)
    expect(levelA).toBeNull()
  })
})

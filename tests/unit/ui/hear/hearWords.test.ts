import { describe, expect, it } from 'vitest'
import { listenTo } from '#acoustics/listen/listening.ts'
import {
  backgroundWords,
  levelsWords,
  playingWords,
  silentWords,
  sourcePlace,
  usualVoice,
  whyNotHeard,
} from '#ui/hear/hearWords.ts'
import { BEDROOM_DB, hearCase, kitSource } from '../../../support/hear/case.ts'

const { answer, source } = hearCase()

describe('what is said of what is heard', () => {
  it('has the levels of both places, the background, and how much louder it could be', () => {
    expect(levelsWords(answer, source, 25)).toBe(
      'In the room 104 dBA; at the bedroom 48 dBA against a background of NC-25, 35 dBA. ' +
        'What plays is the middle of the likely range: it could be 8 dB louder.',
    )
  })

  it('claims no range where none is known', () => {
    expect(levelsWords({ ...answer, marginLow95Db: null }, source, 25)).not.toContain('likely range')
  })

  it('says that a background curve is not printed', () => {
    expect(backgroundWords(10)).toContain('no such curve is printed')
    expect(backgroundWords(15)).not.toContain('printed')
  })

  it('names the octaves that stay silent', () => {
    expect(silentWords(answer)).toBeNull()
    const some = BEDROOM_DB.map((level, octave) => (octave < 2 ? null : level))
    expect(silentWords({ ...answer, levelsDb: some })).toBe(
      'At 63 and 125 Hz no level is known, so nothing plays there.',
    )
  })

  it('says by how many dB something is turned down', () => {
    const room = listenTo({ kind: 'voice', voice: 'kit', levelsDb: answer.sourceDb })
    expect(playingWords('kit pattern in the room', room)).toMatch(
      new RegExp(`^Playing: kit pattern in the room, turned down by ${room.reducedDb} dB`),
    )
    const bedroom = listenTo({ kind: 'voice', voice: 'kit', levelsDb: answer.levelsDb })
    expect(playingWords('kit pattern', bedroom)).not.toContain('turned down')
  })

  it('knows why there is nothing to play', () => {
    expect(whyNotHeard(answer, source)).toBeNull()
    expect(whyNotHeard(answer, null)).toMatch(/No source/)
    expect(whyNotHeard({ ...answer, levelsDb: [] }, source)).toMatch(/is not known/)
    expect(whyNotHeard({ ...answer, sourceDb: [] }, source)).toMatch(/no level in any octave/)
  })

  it.each([
    ['drum_kit_hard', 'kit'],
    ['band_amplified', 'kit'],
    ['bass_amp', 'bass'],
    ['speech_raised', 'speech'],
    [null, 'kit'],
  ] as const)('offers for %s the voice %s first', (preset, voice) => {
    expect(usualVoice(kitSource({ preset, shakes: preset !== 'speech_raised' }))).toBe(voice)
  })

  it('takes noise from outdoors for steady, at the wall', () => {
    const traffic = kitSource({ preset: null, place: 'facade' })
    expect(usualVoice(traffic)).toBe('steady')
    expect(sourcePlace(traffic)).toBe('outside at the wall')
  })
})

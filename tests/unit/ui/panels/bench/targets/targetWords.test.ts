import { describe, expect, it } from 'vitest'
import { LIMIT_PRESETS, SOURCE_PRESETS, sourcePreset } from '#analysis/presets.ts'
import { sourceOf, typedSource } from '#state/usualTargets.ts'
import {
  limitOption,
  limitOrigin,
  originWords,
  overallWords,
  presetOption,
  presetWords,
} from '#ui/panels/bench/targets/targetWords.ts'

function preset(key: string) {
  const found = sourcePreset(key)
  if (!found) throw new Error(`no preset ${key}`)
  return found
}

describe('the words of sources and limits', () => {
  it('never offer a level without saying how it is known, and on what it rests', () => {
    expect(presetOption(preset('drum-kit-hard'))).toBe('Drum kit, hard sticks · 104 dBA · assumed, from memory')
    expect(presetOption(preset('speech-raised'))).toBe('Speech, raised effort · 67 dBA · seen in print')
    for (const one of SOURCE_PRESETS) {
      expect(presetOption(one)).toMatch(/seen in print|assumed, from memory/)
      expect(presetWords(one)).toContain(one.source)
      expect(originWords({ basis: one.basis, preset: one.key })).toContain(one.source)
    }
  })

  it('say of levels typed over a preset that they are typed, and what they began as', () => {
    expect(originWords({ basis: 'measured', preset: 'drum-kit-hard' })).toBe(
      'Typed by you: they count as measured. They began as "Drum kit, hard sticks".',
    )
    expect(originWords(typedSource('Band'))).toBe('Typed by you: they count as measured.')
  })

  it('tell the sum of the octaves that are known, as a least value where some are not', () => {
    expect(overallWords(sourceOf(preset('drum-kit-hard')))).toBe('104 dBA')
    expect(overallWords(sourceOf(preset('speech-raised')))).toMatch(/^at least 6[67] dBA$/)
    expect(overallWords(typedSource('Band'))).toBeNull()
  })

  it('never offer a limit without its source and status', () => {
    for (const one of LIMIT_PRESETS) {
      expect(limitOption(one)).toContain(one.name)
      expect(limitOrigin(one).toLowerCase()).toContain(one.source.toLowerCase())
      expect(limitOrigin(one)).toContain(`Status: ${one.status}.`)
    }
  })
})

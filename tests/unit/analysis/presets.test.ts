import { describe, expect, it } from 'vitest'
import { octaveList } from '#acoustics/bands.ts'
import { A_WEIGHTS, weightedLevel } from '#acoustics/weighting.ts'
import { LIMIT_PRESETS, levelSd, limitPreset, SOURCE_PRESETS, sourcePreset } from '#analysis/presets.ts'

describe('presets', () => {
  it.each(SOURCE_PRESETS)('$name: its octaves give the A-weighted level it was tabulated with', (preset) => {
    // The tabulated one has 8000 Hz in it where the table has that octave, which ends here at 4000 Hz: 0.4 dB at the most.
    expect(Math.abs((weightedLevel(octaveList(preset.levelsDb), A_WEIGHTS) ?? 0) - preset.overallDba)).toBeLessThan(0.4)
  })

  it('have one key each, a source each, and are found by it', () => {
    for (const presets of [SOURCE_PRESETS, LIMIT_PRESETS]) {
      expect(new Set(presets.map(({ key }) => key)).size).toBe(presets.length)
      expect(presets.filter(({ source }) => source.trim() === '')).toEqual([])
    }
    expect(sourcePreset('drum-kit-hard')?.levelsDb[125]).toBe(103)
    expect(limitPreset('code-night')?.limit).toEqual({ kind: 'dBA', levelDb: 50 })
    expect([sourcePreset(null), limitPreset('nothing')]).toEqual([null, null])
  })

  it('say that drums, bands, bass and cinema shake the building', () => {
    const shaking = SOURCE_PRESETS.filter(({ shakes }) => shakes).map(({ key }) => key)
    expect(shaking).toEqual([
      'drum-kit-hard',
      'drum-kit-moderate',
      'band-amplified',
      'bass-amplifier',
      'mixing-85',
      'cinema-loud',
    ])
  })

  it('spread less the better they are known, and state nothing where nothing is', () => {
    expect(levelSd('memory')).toBeGreaterThan(levelSd('seen'))
    expect(levelSd('seen')).toBeGreaterThan(levelSd('measured'))
    expect(sourcePreset('speech-normal')?.levelsDb).toMatchObject({ 63: null, 125: null, 250: 57.2 })
  })
})

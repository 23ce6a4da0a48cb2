import { describe, expect, it } from 'vitest'
import { isSameSpectrum, readSpectrum, silentOctaves, spectrumText } from '#ui/panels/bench/targets/spectrum.ts'

const KIT = { 63: 100, 125: 103, 250: 101, 500: 100, 1000: 98, 2000: 97, 4000: 95 }
const WITHOUT_500 = { ...KIT, 500: null }

describe('a spectrum in one line', () => {
  it.each([
    '100 103 101 100 98 97 95',
    '100\t103\t101\t100\t98\t97\t95',
    '100; 103; 101; 100; 98; 97; 95',
    '100, 103, 101, 100, 98, 97, 95',
  ])('reads %s', (text) => {
    expect(readSpectrum(text)).toEqual({ ok: true, value: KIT })
  })

  it('takes a dash as an octave nobody knows, and a comma between digits as a decimal point', () => {
    expect(readSpectrum('100 103 101 – 98 97 95')).toEqual({ ok: true, value: WITHOUT_500 })
    expect(readSpectrum('100,5 103 101 - 98 97 95')).toEqual({ ok: true, value: { ...WITHOUT_500, 63: 100.5 } })
  })

  it('says how many values are missing, never fills one in', () => {
    expect(readSpectrum('100 103 101 100 98 97')).toEqual({
      ok: false,
      error:
        '6 values are written, and there are 7 octaves from 63 to 4000 Hz: write all of them, with – where a level is not known.',
    })
    expect(readSpectrum('100')).toMatchObject({ ok: false, error: expect.stringContaining('1 value is written') })
  })

  it('names the octave that cannot be read', () => {
    expect(readSpectrum('100 103 loud 100 98 97 95')).toEqual({
      ok: false,
      error: '"loud" at 250 Hz cannot be read: a level is a number in dB, such as 95.',
    })
  })

  it('is written as it is read', () => {
    expect(spectrumText(WITHOUT_500)).toBe('100 103 101 – 98 97 95')
    const read = readSpectrum(spectrumText(WITHOUT_500))
    expect(read.ok && isSameSpectrum(read.value, WITHOUT_500)).toBe(true)
    expect(isSameSpectrum(KIT, WITHOUT_500)).toBe(false)
  })

  it('is empty where nothing is known', () => {
    expect(spectrumText({ 63: null, 125: null, 250: null, 500: null, 1000: null, 2000: null, 4000: null })).toBe('')
  })

  it('names the octaves without a level', () => {
    expect(silentOctaves(KIT)).toBeNull()
    expect(silentOctaves(WITHOUT_500)).toBe('500 Hz')
    expect(silentOctaves({ ...WITHOUT_500, 63: null, 125: null })).toBe('63, 125 and 500 Hz')
  })
})

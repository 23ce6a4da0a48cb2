import { describe, expect, it } from 'vitest'
import { BANDS_HZ, bandIndex } from '#acoustics/bands.ts'
import { NIC_NO_8DB_RULE, rateNic } from '#acoustics/noiseIsolation.ts'

/** The E413 contour at `value`, 125-4000 Hz; nothing outside. */
function contourAt(value: number): (number | null)[] {
  const relative = [-16, -13, -10, -7, -4, -1, 0, 1, 2, 3, 4, 4, 4, 4, 4, 4]
  const first = bandIndex(125)
  return BANDS_HZ.map((_, band) => {
    const level = relative[band - first]
    return level === undefined ? null : value + level
  })
}

describe('rateNic', () => {
  it('fits the contour to a noise reduction known from 125 to 4000 Hz alone', () => {
    // 16 bands: two more dB cost 32 in all, a third would cost 48.
    expect(rateNic(contourAt(44))).toMatchObject({ ok: true, value: { name: 'NIC', value: 46, limitedBy: 'total' } })
  })

  it('holds one band to 8 dB, unless the newer edition is asked for', () => {
    const dip = contourAt(44).map((value, band) => (band === bandIndex(125) && value !== null ? value - 8 : value))
    expect(rateNic(dip)).toMatchObject({ value: { value: 44, limitedBy: 'band', limitingBandHz: 125 } })
    // Without it: 9 dB at 125 Hz and 1 dB in 15 bands make 24; one more step makes 40.
    expect(rateNic(dip, NIC_NO_8DB_RULE)).toMatchObject({ value: { value: 45, limitedBy: 'total' } })
  })

  it('names the bands that are missing', () => {
    const holes = contourAt(44).map((value, band) => (BANDS_HZ[band] === 160 ? null : value))
    expect(rateNic(holes)).toMatchObject({
      ok: false,
      error: {
        kind: 'missing-bands',
        bandsHz: [160],
        message: 'NIC needs the noise reduction in every one-third octave from 125 to 4000 Hz; 160 Hz is missing.',
      },
    })
    const more = holes.map((value, band) => (BANDS_HZ[band] === 2000 ? Number.NaN : value))
    expect(rateNic(more)).toMatchObject({ ok: false, error: { bandsHz: [160, 2000] } })
    expect(rateNic(BANDS_HZ.map(() => null))).toMatchObject({ ok: false, error: { kind: 'missing-bands' } })
  })

  it('refuses a list that is not one value a band', () => {
    expect(rateNic([40, 41, 42])).toMatchObject({ ok: false, error: { kind: 'wrong-length' } })
  })
})

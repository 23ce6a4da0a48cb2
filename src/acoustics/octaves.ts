import { BANDS_HZ, OCTAVES_HZ } from '#acoustics/bands.ts'
import { invariant } from '#units/result.ts'

/** Values given by octave, over BANDS_HZ: each of the three thirds has its octave's, so that a curve reads back the same. */
export function thirdsOfOctaves<Value>(byOctave: readonly Value[]): readonly Value[] {
  invariant(byOctave.length === OCTAVES_HZ.length, 'a curve by octave has 7 values')
  return BANDS_HZ.map((_, band) => byOctave[Math.floor(band / 3)]!)
}

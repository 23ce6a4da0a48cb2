import { OCTAVE_KEYS, OCTAVES_HZ, type OctaveValues, octaveList, octaveValues } from '#acoustics/bands.ts'
import { numberText, readNumber } from '#ui/fields/readNumber.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** How an octave of which nobody knows is written in a line. */
const UNKNOWN = '–'
const UNKNOWN_WRITTEN = /^[-–—?x]$/i

/**
 * Seven values written in one line, 63 to 4000 Hz, parted by spaces, tabs or semicolons; a dash is an octave nobody knows.
 * @returns the values, or a sentence saying what is missing or cannot be read
 * @example readSpectrum('100 103 101 – 98 97 95') // 500 Hz: null
 */
export function readSpectrum(text: string): Result<OctaveValues, string> {
  const words = text
    .trim()
    .split(/[\s;]+|,\s+/)
    .filter((word) => word !== '')
  if (words.length !== OCTAVES_HZ.length) {
    const count = words.length === 1 ? '1 value is' : `${words.length} values are`
    return fail(
      `${count} written, and there are ${OCTAVES_HZ.length} octaves from 63 to 4000 Hz: write all of them, with ${UNKNOWN} where a level is not known.`,
    )
  }
  const values: (number | null)[] = []
  for (const [index, word] of words.entries()) {
    const read = readOctave(word, index)
    if (!read.ok) return read
    values.push(read.value)
  }
  return ok(octaveValues(values))
}

function readOctave(word: string, index: number): Result<number | null, string> {
  if (UNKNOWN_WRITTEN.test(word)) return ok(null)
  return readNumber(word, {
    unit: 'dB',
    what: `"${word}" at ${OCTAVES_HZ[index]} Hz cannot be read: a level`,
    example: 95,
  })
}

/** The same the other way round: 100 103 101 – 98 97 95; nothing where no octave is known. */
export function spectrumText(values: OctaveValues): string {
  const list = octaveList(values)
  if (list.every((value) => value === null)) return ''
  return list.map((value) => (value === null ? UNKNOWN : numberText(value))).join(' ')
}

export function isSameSpectrum(a: OctaveValues, b: OctaveValues): boolean {
  return OCTAVE_KEYS.every((key) => a[key] === b[key])
}

/** Octaves without a value, as a sentence names them: 63 and 125 Hz; null: every one has one. */
export function silentOctaves(values: OctaveValues): string | null {
  const silent = OCTAVE_KEYS.filter((key) => values[key] === null)
  if (silent.length === 0) return null
  return `${[silent.slice(0, -1).join(', '), silent.at(-1)].filter((part) => part !== '').join(' and ')} Hz`
}

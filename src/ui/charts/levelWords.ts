import { OCTAVES_HZ } from '#acoustics/bands.ts'
import type { DrawnLevels } from '#ui/charts/levelScale.ts'
import { fixed } from '#units/format.ts'
import type { Decibels } from '#units/quantity.ts'

/**
 * One octave of the chart, in words: "125 Hz: 52 dB at the receiver, likely 46-58 dB; limit 44 dB; source 101 dB".
 * @param octave  place in OCTAVES_HZ
 */
export function octaveWords(drawn: DrawnLevels, octave: number): string {
  const at = (list: readonly (Decibels | null)[] | null) => list?.[octave] ?? null
  const [level, low, high] = [at(drawn.levelsDb), at(drawn.levelsLow95Db), at(drawn.levelsHigh95Db)]
  const [limit, source] = [at(drawn.limitDb), at(drawn.sourceDb)]
  const range = low !== null && high !== null ? `, likely ${whole(low)} to ${whole(high)} dB` : ''
  const said = [
    level === null ? 'level at the receiver not known' : `${whole(level)} dB at the receiver${range}`,
    ...(limit === null ? [] : [`limit ${whole(limit)} dB`]),
    source === null ? 'the source has no level here, so it is not judged' : `source ${whole(source)} dB`,
  ]
  return `${OCTAVES_HZ[octave]} Hz: ${said.join('; ')}`
}

function whole(level: Decibels): string {
  return fixed(level, 0).replace('-', '−')
}

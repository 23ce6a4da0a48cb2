import { done, type Outcome, readInput, refused } from '#cli/io.ts'
import { readSystems } from '#cli/rate/input.ts'
import { rateSystem } from '#cli/rate/report.ts'
import { rateText } from '#cli/rate/text.ts'

export interface RateOptions {
  readonly json?: boolean | undefined
}

/** `leafgap rate FILE|-`: transmission loss and ratings of layered systems; one bad system refuses them all. */
export async function rateCommand(file: string, options: RateOptions): Promise<Outcome> {
  const text = await readInput(file)
  if (!text.ok) return refused([text.error])
  const parsed = parseJson(text.value)
  if (typeof parsed === 'string') return refused([`${file === '-' ? 'standard input' : file} ${parsed}`])
  const systems = readSystems(parsed.value)
  if (!systems.ok) return refused(systems.error)
  const rated = systems.value.map(rateSystem)
  const problems = rated.flatMap((result) => (result.ok ? [] : result.error))
  if (problems.length > 0) return refused(problems)
  const report = rated.flatMap((result) => (result.ok ? [result.value] : []))
  return done(
    options.json ? `${JSON.stringify({ systems: report }, null, 2)}\n` : `${report.map(rateText).join('\n\n')}\n`,
  )
}

/** What the text says, or why it is no JSON. */
function parseJson(text: string): { readonly value: unknown } | string {
  if (text.trim() === '') return 'is empty: give JSON such as {"systems":[{"id":"W1","layers":[...]}]}'
  try {
    return { value: JSON.parse(text) }
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : 'no reason given'
    // Written by many programs, known to none of JSON's readers.
    const hint = /[[:,\s]-?(NaN|Infinity)\b/.test(text) ? '; NaN and Infinity are not numbers in JSON' : ''
    return `is not readable JSON (${reason})${hint}`
  }
}

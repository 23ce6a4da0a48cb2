import type { z } from 'zod'

/** One thing wrong with a file: a sentence, and where in the file. */
export interface FileProblem {
  readonly where: string
  readonly message: string
}

/** A zod issue as a sentence a designer can act on, ending in the place: "..., at rooms[0].heights[0].heightMm". */
export function problemOf(issue: z.core.$ZodIssue, document: unknown): FileProblem {
  const where = placeOf(issue.path)
  const missing = issue.path.length > 0 && valueAt(document, issue.path) === undefined
  return { where, message: `${missing ? `${nounOf(issue.path)} is missing` : sentenceOf(issue)}, at ${where}` }
}

/**
 * A file's issues as sentences. What stands among the own assemblies without being one (earlier versions kept anything
 * with an id there) is told once, not key by key.
 */
export function problemsOf(issues: readonly z.core.$ZodIssue[], document: unknown): readonly FileProblem[] {
  const told = new Set<string>()
  return issues.flatMap((issue) => {
    const entry = placeOf(issue.path.slice(0, 2))
    if (issue.path[0] !== 'assemblies' || !isStranger(valueAt(document, issue.path.slice(0, 2)))) {
      return [problemOf(issue, document)]
    }
    if (told.has(entry)) return []
    told.add(entry)
    const message = `this is not an assembly, for it has no list of "layers"; take it out of the file, at ${entry}`
    return [{ where: entry, message }]
  })
}

function isStranger(entry: unknown): boolean {
  return (
    typeof entry === 'object' && entry !== null && !Array.isArray(entry) && !Array.isArray(valueAt(entry, ['layers']))
  )
}

function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  let value = document
  for (const step of path) value = value === null ? undefined : (value as Record<PropertyKey, unknown>)?.[step]
  return value
}

function sentenceOf(issue: z.core.$ZodIssue): string {
  const what = nounOf(issue.path)
  switch (issue.code) {
    case 'invalid_type':
      return `${what} has to be ${article(issue.expected)}`
    case 'too_small':
      if (issue.origin !== 'number') return `${what} ${customText(issue.message) ?? 'must not be empty'}`
      return `${what} has to be ${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}`
    case 'too_big':
      return issue.origin === 'number' ? `${what} has to be at most ${issue.maximum}` : `${what} is too long`
    case 'invalid_value':
      return `${what} has to be ${issue.values.map((value) => JSON.stringify(value)).join(' or ')}`
    case 'invalid_union':
      return `${what} is none of those this version of the format knows`
    case 'custom':
      return `${what} ${issue.message}`
    case 'unrecognized_keys':
      return `${issue.keys.map((key) => `"${key}"`).join(', ')} is not known to this version of the format`
    default:
      return `${what} ${customText(issue.message ?? '') ?? 'cannot be read'}`
  }
}

function customText(message: string): string | null {
  return message.startsWith('needs') ? message : null
}

function nounOf(path: readonly PropertyKey[]): string {
  const last = path.at(-1)
  if (typeof last === 'number') return `entry ${last + 1}`
  return last === undefined ? 'the file' : `"${String(last)}"`
}

function article(expected: string): string {
  return /^[aeiou]/.test(expected) ? `an ${expected}` : `a ${expected}`
}

/** rooms[0].heights[0].heightMm; "the top" for the file itself. */
export function placeOf(path: readonly PropertyKey[]): string {
  let place = ''
  for (const step of path) {
    if (typeof step === 'number') place += `[${step}]`
    else place += place === '' ? String(step) : `.${String(step)}`
  }
  return place === '' ? 'the top of the file' : place
}

/** A problem whose sentence ends in its place. */
export function problem(where: string, what: string): FileProblem {
  return { where, message: `${what}, at ${where}` }
}

/** A problem for every id that two things of one list have. */
export function repeatedIds(things: readonly { readonly id: string }[], at: string): FileProblem[] {
  const seen = new Set<string>()
  const repeated = new Set<string>()
  for (const { id } of things) {
    if (seen.has(id)) repeated.add(id)
    seen.add(id)
  }
  return [...repeated].map((id) => problem(at, `the id "${id}" is used twice`))
}

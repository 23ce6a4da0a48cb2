import type { z } from 'zod'
import { OCTAVE_KEYS } from '#acoustics/bands.ts'

/** One thing wrong with a file: a sentence, and where in the file. */
export interface FileProblem {
  readonly where: string
  readonly message: string
}

/** A zod issue as a sentence a designer can act on, ending in the place: "..., at rooms[0].heights[0].heightMm". */
export function problemOf(issue: z.core.$ZodIssue, document: unknown): FileProblem {
  const octave = octaveProblem(issue)
  if (octave) return octave
  const where = placeOf(issue.path)
  const missing = issue.path.length > 0 && valueAt(document, issue.path) === undefined
  return { where, message: `${missing ? `${nounOf(issue.path)} is missing` : sentenceOf(issue)}, at ${where}` }
}

/** A value of a spectrum that is missing, or is none; null: the issue is another. */
function octaveProblem({ code, path }: z.core.$ZodIssue): FileProblem | null {
  const key = String(path.at(-1))
  const spectrum = String(path.at(-2))
  if (code !== 'invalid_type' || !SPECTRA.includes(spectrum) || !OCTAVE_KEYS.some((octave) => octave === key)) {
    return null
  }
  return problem(placeOf(path.slice(0, -1)), `a spectrum needs a value or null for ${key} Hz`)
}

/** Keys of the file that hold one value an octave. */
const SPECTRA: readonly string[] = ['levelsDb', 'differenceDb', 'insertionLossDb']

/** Lists that earlier versions kept unread, whatever stood in them, and what an entry has to have to be one of them. */
const ONCE_RESERVED: Readonly<Record<string, { readonly what: string; readonly key: string; readonly as: string }>> = {
  assemblies: { what: 'an assembly', key: 'layers', as: 'list of "layers"' },
  receivers: { what: 'a receiver', key: 'place', as: '"place"' },
  sources: { what: 'a source', key: 'levelsDb', as: 'spectrum "levelsDb"' },
}

/**
 * A file's issues as sentences. What stands among assemblies, receivers or sources without being one (earlier versions
 * kept anything with an id there) is told once, not key by key.
 */
export function problemsOf(issues: readonly z.core.$ZodIssue[], document: unknown): readonly FileProblem[] {
  const told = new Set<string>()
  return issues.flatMap((issue) => {
    const entry = placeOf(issue.path.slice(0, 2))
    const wanted = ONCE_RESERVED[String(issue.path[0])]
    if (!wanted || !isStranger(valueAt(document, issue.path.slice(0, 2)), wanted.key)) {
      return [problemOf(issue, document)]
    }
    if (told.has(entry)) return []
    told.add(entry)
    return [problem(entry, `this is not ${wanted.what}, for it has no ${wanted.as}; take it out of the file`)]
  })
}

function isStranger(entry: unknown, key: string): boolean {
  if (typeof entry !== 'object' || entry === null || Array.isArray(entry)) return false
  const value = valueAt(entry, [key])
  return typeof value !== 'object' || value === null
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
  if (SPECTRA.includes(String(path.at(-2)))) return `the value at ${String(last)} Hz`
  return last === undefined ? 'the file' : `"${String(last)}"`
}

function article(expected: string): string {
  if (expected === 'int') return 'a whole number'
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

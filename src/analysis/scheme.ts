import { AS_IS } from '#assemblies/assembly.ts'

/** What is built against one surface. */
export interface Choice {
  /** Catalogue id, or as-is. */
  readonly assembly: string
  readonly removeLining: boolean
}

/** One complete set of choices; a surface without one stays as it is. */
export interface Scheme {
  readonly id: string
  readonly name: string
  readonly choices: Readonly<Record<string, Choice>>
}

const NOTHING: Choice = { assembly: AS_IS, removeLining: false }

/** The choice for a surface; as-is where none was made. */
export function choiceFor(scheme: Scheme, surfaceId: string): Choice {
  return Object.hasOwn(scheme.choices, surfaceId) ? (scheme.choices[surfaceId] ?? NOTHING) : NOTHING
}

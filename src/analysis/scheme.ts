import { AS_IS } from '#assemblies/assembly.ts'

/** What is built against one surface. */
export interface Choice {
  /** Catalogue id, or as-is. */
  readonly assembly: string
  readonly removeLining: boolean
  /** Of a new floor: laid level at the slab's highest place; absent or false: it follows the old fall. */
  readonly laidLevel?: boolean | undefined
}

/** One complete set of choices; a surface without one stays as it is. */
export interface Scheme {
  readonly id: string
  readonly name: string
  readonly choices: Readonly<Record<string, Choice>>
  /** Obstacles this scheme takes out of the room, by id. */
  readonly takenOut?: readonly string[] | undefined
  /** Which wall's lining runs through at a corner, by the corner's id; absent: as `cornersAsBuilt` settles it. */
  readonly runsThrough?: Readonly<Record<string, string>> | undefined
}

const NOTHING: Choice = { assembly: AS_IS, removeLining: false }

/** The choice for a surface; as-is where none was made. */
export function choiceFor(scheme: Scheme, surfaceId: string): Choice {
  return Object.hasOwn(scheme.choices, surfaceId) ? (scheme.choices[surfaceId] ?? NOTHING) : NOTHING
}

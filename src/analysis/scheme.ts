import type { DuctMade } from '#analysis/room.ts'
import { AS_IS } from '#assemblies/assembly.ts'
import type { OpeningMade } from '#assemblies/opening.ts'
import type { Millimetres } from '#units/quantity.ts'

/** What is built against one surface. */
export interface Choice {
  /** Catalogue id, or as-is. */
  readonly assembly: string
  readonly removeLining: boolean
  /** Of a new floor: laid level at the slab's highest place; absent or false: it follows the old fall. */
  readonly laidLevel?: boolean | undefined
}

/** How well joints and penetrations are closed; what it means in mm stands in data/airtightness.json. */
export type Airtightness = 'sealed' | 'ordinary' | 'poor'
export const AIRTIGHTNESS: readonly Airtightness[] = ['sealed', 'ordinary', 'poor']

/** Round holes left open right through a surface. */
export interface Hole {
  readonly id: string
  readonly name: string
  readonly diameterMm: Millimetres
  readonly count: number
}

/** Where one surface lets air through. */
export interface Leaks {
  /** Open gap all round, right through; absent: as the scheme's airtightness says. */
  readonly gapMm?: Millimetres | undefined
  readonly holes: readonly Hole[]
}

/** A silencer box that takes room: standing on the floor, or hanging with clear height under it. */
export interface SilencerBox {
  readonly id: string
  readonly name: string
  /** Id of the duct it serves; null: none named. */
  readonly duct: string | null
  /** Room it stands in. */
  readonly room: string
  /** Middle of its footprint. */
  readonly xMm: Millimetres
  readonly yMm: Millimetres
  readonly widthMm: Millimetres
  readonly depthMm: Millimetres
  readonly heightMm: Millimetres
  /** Counter-clockwise. */
  readonly angleDeg: number
  /** Finished floor to its underside; 0: it stands. */
  readonly undersideMm: Millimetres
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
  /** What is put into openings, by their id; absent: they stay as they stand. */
  readonly openings?: Readonly<Record<string, OpeningMade>> | undefined
  /** Absent: ordinary. */
  readonly airtightness?: Airtightness | undefined
  /** By surface id; absent: as airtightness says, and no holes. */
  readonly leaks?: Readonly<Record<string, Leaks>> | undefined
  /** What is done to ducts, by their id; absent: they stay as they stand. */
  readonly ducts?: Readonly<Record<string, DuctMade>> | undefined
  /** Absent: none. */
  readonly boxes?: readonly SilencerBox[] | undefined
}

/** A change to a scheme that is one step for the user; what it does not name stays. */
export interface SchemeChange {
  readonly choices?: Readonly<Record<string, Choice>> | undefined
  readonly openings?: Readonly<Record<string, OpeningMade>> | undefined
  readonly airtightness?: Airtightness | undefined
  readonly leaks?: Readonly<Record<string, Leaks>> | undefined
  readonly ducts?: Readonly<Record<string, DuctMade>> | undefined
}

/** The scheme with a change made. */
export function withChange(scheme: Scheme, change: SchemeChange): Scheme {
  return {
    ...scheme,
    choices: { ...scheme.choices, ...change.choices },
    ...(change.openings && { openings: { ...scheme.openings, ...change.openings } }),
    ...(change.airtightness && { airtightness: change.airtightness }),
    ...(change.leaks && { leaks: { ...scheme.leaks, ...change.leaks } }),
    ...(change.ducts && { ducts: { ...scheme.ducts, ...change.ducts } }),
  }
}

const NOTHING: Choice = { assembly: AS_IS, removeLining: false }

/** The choice for a surface; as-is where none was made. */
export function choiceFor(scheme: Scheme, surfaceId: string): Choice {
  return Object.hasOwn(scheme.choices, surfaceId) ? (scheme.choices[surfaceId] ?? NOTHING) : NOTHING
}

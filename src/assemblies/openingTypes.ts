import type { OpeningType } from '#assemblies/opening.ts'

/** Every built-in door, window, vehicle door and vent. */
export const OPENING_TYPES: readonly OpeningType[] = []

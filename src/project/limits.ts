import type { Millimetres } from '#units/quantity.ts'

/** Lengths past this are a slip of the unit, and the overlay is exact up to it. @source our own choice */
export const LARGEST_MM: Millimetres = 60_000
/** A lining or an allowance thicker than this is a slip of the unit. @source our own choice */
export const DEEPEST_MM: Millimetres = 10_000
export const LONGEST_NAME = 200
export const LONGEST_NOTE = 2000
/** Own assemblies and their layers; more is a slip of a machine. @source our own choice */
export const MOST_ASSEMBLIES = 500
export const MOST_LAYERS = 40
/** Two or three words beside a mark. @source our own choice */
export const LONGEST_SHORT_NAME = 40
/** A sentence to whoever builds it. @source our own choice */
export const LONGEST_CAUTION = 600
/** A picture to trace is brought down to this many pixels a side. @source our own choice */
export const LARGEST_PX = 4000
/** Pictures past this make a file that is slow to send; said, not refused. @source our own choice */
export const HEAVY_PICTURE_BYTES = 10_000_000
export const MOST_UNDERLAYS = 20
/** More is a slip of the hand. @source our own choice */
export const MOST_PEOPLE = 200
export const MOST_BENDS = 20
export const MOST_HOLES = 1000
/** A finished room rings no longer than a cathedral. @source our own choice */
export const MOST_REVERBERATION_S = 20
/** Levels and level differences past these are slips, dB. @source our own choice */
export const LOWEST_DB = -50
export const HIGHEST_DB = 200
/** More than any silencer takes off, dB; past it is a slip. @source our own choice */
export const MOST_INSERTION_LOSS_DB = 80
/** Of one standard deviation of a source's levels, dB. @source our own choice */
export const MOST_SD_DB = 30
/** Highest NC or NR, and highest dBA or dBC, that limits something. @source our own choice */
export const HIGHEST_CURVE = 80
export const HIGHEST_LIMIT_DB = 120
/** Of a receiver in the open: past it, weather decides. @source our own choice */
export const FARTHEST_MM: Millimetres = 10_000_000
/** Of what a screen or turning away takes off, dB. @source our own choice */
export const MOST_SCREENED_DB = 40
/** Of a receiver's room, m3, and of its absorption, m2. @source our own choice */
export const MOST_VOLUME = 100_000

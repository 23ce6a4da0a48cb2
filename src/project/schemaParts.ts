import { z } from 'zod'
import { DEEPEST_MM, HIGHEST_DB, LARGEST_MM, LONGEST_NAME, LOWEST_DB, MOST_INSERTION_LOSS_DB } from '#project/limits.ts'

export const coordinate = z.number().min(-LARGEST_MM).max(LARGEST_MM)
export const size = z.number().positive().max(LARGEST_MM)
export const depth = z.number().min(0).max(LARGEST_MM)
export const id = z.string().min(1).max(100)
export const thickness = z.number().positive().max(DEEPEST_MM)
export const allowance = z.number().min(0).max(DEEPEST_MM)
export const name = z.string().min(1).max(LONGEST_NAME)

/** dB, of any level or level difference. */
const level = z.number().min(LOWEST_DB).max(HIGHEST_DB)

/** One value an octave; null: nobody has said. */
export const octaves = byOctave(level)

/** What something takes off by octave, never less than nothing; null: nobody has said. */
export const octaveLosses = byOctave(z.number().min(0).max(MOST_INSERTION_LOSS_DB))

function byOctave(value: z.ZodNumber) {
  return z.strictObject({
    63: value.nullable(),
    125: value.nullable(),
    250: value.nullable(),
    500: value.nullable(),
    1000: value.nullable(),
    2000: value.nullable(),
    4000: value.nullable(),
  })
}

import { z } from 'zod'
import { JUNCTION_CLASSES } from '#analysis/target.ts'
import {
  FARTHEST_MM,
  HIGHEST_CURVE,
  HIGHEST_LIMIT_DB,
  MOST_SCREENED_DB,
  MOST_SD_DB,
  MOST_VOLUME,
} from '#project/limits.ts'
import { id, name, octaves } from '#project/schemaParts.ts'

/** Something that is heard. */
export const sourceSchema = z.strictObject({
  id,
  name,
  preset: id.nullable(),
  levelsDb: octaves,
  place: z.enum(['room-average', 'one-metre', 'facade']),
  basis: z.enum(['seen', 'memory', 'measured']),
  sdDb: z.number().min(0).max(MOST_SD_DB),
  shakes: z.boolean(),
})

const limit = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.enum(['NC', 'NR']), index: z.number().min(0).max(HIGHEST_CURVE) }),
  z.strictObject({ kind: z.enum(['dBA', 'dBC']), levelDb: z.number().min(0).max(HIGHEST_LIMIT_DB) }),
])

const receiverPlace = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('room'),
    volumeM3: z.number().positive().max(MOST_VOLUME),
    furnishing: z.enum(['furnished', 'bare', 'typed']),
    absorptionM2: z.number().positive().max(MOST_VOLUME).nullable(),
  }),
  z.strictObject({
    kind: z.literal('outdoors'),
    distanceMm: z.number().positive().max(FARTHEST_MM),
    atFacade: z.boolean(),
  }),
  z.strictObject({ kind: z.literal('this-room') }),
])

/** Somebody who must not hear it. */
export const receiverSchema = z.strictObject({
  id,
  name,
  room: id,
  source: id.nullable(),
  place: receiverPlace,
  through: z.array(
    z.strictObject({
      surface: id,
      distanceMm: z.number().positive().max(FARTHEST_MM).optional(),
      screenedDb: z.number().min(0).max(MOST_SCREENED_DB).optional(),
    }),
  ),
  limit,
  limitPreset: id.nullable(),
  hasBeat: z.boolean(),
  backgroundNc: z.number().min(0).max(HIGHEST_CURVE),
  junction: z.enum(JUNCTION_CLASSES),
  linedBeyond: z.enum(['none', 'shared', 'all']),
  measured: z.array(z.strictObject({ id, when: z.enum(['before', 'after']), name, differenceDb: octaves })),
})

import { z } from 'zod'
import { OPENING_KINDS, type OpeningLoss, type OpeningType, type Pane, type PanePair } from '#assemblies/opening.ts'
import { layerSchema, sourceSchema } from '#assemblies/schema.ts'

/** dB of a printed loss: none is below nothing, none above what a laboratory can measure. */
const loss = z.number().min(0).max(100)
const spread = z.number().positive().max(20)
const length = z.number().positive()
const stc = z.number().min(0).max(100)

const paneSchema: z.ZodType<Pane> = z.strictObject({ thicknessMm: length, isLaminated: z.boolean() })

const panePairSchema: z.ZodType<PanePair> = z.strictObject({ outer: paneSchema, gapMm: length, inner: paneSchema })

const lossSchema: z.ZodType<OpeningLoss> = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('octaves'),
    lossDb: z.strictObject({
      63: loss.optional(),
      125: loss,
      250: loss,
      500: loss,
      1000: loss,
      2000: loss,
      4000: loss,
    }),
    sdDb: spread,
  }),
  z.strictObject({ kind: z.literal('contour'), stc, sdDb: spread }),
  z.strictObject({ kind: z.literal('layers'), layers: z.array(layerSchema).min(1) }),
  z.strictObject({ kind: z.literal('panes'), usual: panePairSchema }),
  z.strictObject({
    kind: z.literal('pair'),
    first: z.string().min(1),
    second: z.string().min(1),
    gapMm: length,
    isLined: z.boolean(),
  }),
  z.strictObject({ kind: z.literal('duct') }),
  z.strictObject({ kind: z.literal('as-the-wall'), lessDb: z.number().min(0), sdDb: z.number().min(0) }),
  z.strictObject({ kind: z.literal('open') }),
])

/** One type of door, window, vehicle door or vent as its file says it; unknown keys are refused. */
export const openingTypeSchema: z.ZodType<OpeningType> = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]+$/),
  name: z.string().min(1),
  shortName: z.string().min(1),
  kinds: z.array(z.enum(OPENING_KINDS)).min(1),
  loss: lossSchema,
  seals: z.enum(['tested', 'cracks-included', 'none']),
  massKgM2: z.number().positive().nullable(),
  thicknessMm: length,
  published: z.strictObject({ stc, range: z.tuple([stc, stc]).optional(), source: sourceSchema }).nullable(),
  costBand: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(5)]),
  cautions: z.array(z.string().min(1)),
  source: sourceSchema,
})

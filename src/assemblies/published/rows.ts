import { z } from 'zod'
import type { Source } from '#assemblies/assembly.ts'
import table from '#assemblies/published/data/ratings.json' with { type: 'json' }
import { layerSchema } from '#assemblies/schema.ts'

const lengths = z.array(z.number().nonnegative())

/** A build-up in the columns of the table it was printed in; several numbers: one value is printed for all of them. */
const build = z.strictObject({
  leaf1: z.string(),
  framing: z.string(),
  connection: z.string(),
  leaf2: z.string(),
  studDepthMm: z.number().optional(),
  studSpacingMm: lengths,
  channelSpacingMm: lengths,
  cavityDepthMm: z.number().optional(),
  absorberMm: lengths,
})

const row = z.strictObject({
  id: z.string().min(1),
  kind: z.enum(['wall', 'floor', 'window', 'door']),
  description: z.string().optional(),
  build: build.optional(),
  layers: z.array(layerSchema).optional(),
  assumed: z.string().optional(),
  outlier: z.string().optional(),
  stc: z.number().optional(),
  rw: z.number().optional(),
  c: z.number().optional(),
  ctr: z.number().optional(),
  iic: z.number().optional(),
  source: z.string(),
  where: z.string().optional(),
  status: z.enum(['seen', 'memory']),
  confidence: z.enum(['high', 'medium', 'low']),
  note: z.string().optional(),
})

/** One line of a published table of ratings. */
export type PublishedRow = Readonly<z.infer<typeof row>>
/** See `build` of a row. */
export type TabledBuild = Readonly<z.infer<typeof build>>

const file = z.strictObject({ sources: z.record(z.string(), z.string()), rows: z.array(row) })

let read: z.infer<typeof file> | undefined

function checked(): z.infer<typeof file> {
  read ??= file.parse(table)
  return read
}

/** Every published rating at hand, in the order of the tables; checked once, then kept. */
export function publishedRows(): readonly PublishedRow[] {
  return checked().rows
}

/** The table a row stands in, where in it, and whether it was read. */
export function sourceOf({ source, where, status }: PublishedRow): Source {
  const text = checked().sources[source] ?? source
  return { text: where === undefined ? text : `${text}, ${where}`, status }
}

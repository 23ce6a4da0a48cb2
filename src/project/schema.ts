import { z } from 'zod'
import { typedAssemblySchema } from '#assemblies/schema.ts'
import { DEEPEST_MM, LARGEST_MM, LONGEST_NAME, LONGEST_NOTE, MOST_ASSEMBLIES } from '#project/limits.ts'
import { FORMAT } from '#project/project.ts'

const coordinate = z.number().min(-LARGEST_MM).max(LARGEST_MM)
const size = z.number().positive().max(LARGEST_MM)
const depth = z.number().min(0).max(LARGEST_MM)
const id = z.string().min(1).max(100)
const thickness = z.number().positive().max(DEEPEST_MM)
const allowance = z.number().min(0).max(DEEPEST_MM)
const name = z.string().min(1).max(LONGEST_NAME)

const lining = z.strictObject({
  thicknessMm: thickness,
  neededForFire: z.enum(['yes', 'no', 'unknown']),
  material: z.enum(['gypsum-regular', 'gypsum-type-x', 'plywood', 'osb']).optional(),
})

const facts = {
  id,
  existing: id,
  farSide: z.enum(['neighbour', 'outdoors', 'own-house', 'soil', 'nothing']),
  measuredTo: z.enum(['finished-face', 'structure']),
  lining: lining.nullable(),
  outOfTrueMm: allowance,
}

const planPoint = z.strictObject({ xMm: coordinate, yMm: coordinate })
const ring = z.array(planPoint).min(3, { error: 'needs at least three corners' })

const room = z.strictObject({
  id,
  name,
  corners: z
    .array(z.strictObject({ id, xMm: coordinate, yMm: coordinate }))
    .min(3, { error: 'needs at least three corners' }),
  walls: z.array(z.strictObject({ ...facts, from: id, to: id })),
  ceiling: z.strictObject(facts),
  floor: z.strictObject(facts),
  heights: z
    .array(z.strictObject({ id, xMm: coordinate, yMm: coordinate, heightMm: size }))
    .min(1, { error: 'needs at least one measured height' }),
  obstacles: z.array(z.strictObject({ id, name, corners: ring, liningMm: allowance })),
  drops: z.array(
    z.strictObject({ id, name, corners: ring, undersideMm: size, boxBelowMm: allowance, boxSidesMm: allowance }),
  ),
  openings: z.array(
    z.strictObject({
      id,
      kind: z.enum(['door', 'window', 'vehicle-door', 'vent']),
      name,
      wall: id,
      fromMm: depth,
      widthMm: size,
      heightMm: size,
      sillMm: depth,
    }),
  ),
})

const choice = z.strictObject({ assembly: id, removeLining: z.boolean() })

/** Kept as it is for a later Leafgap: this one neither reads nor changes what stands in it. */
const reserved = z.array(z.looseObject({ id }))

/** Version 1 of the project file, strict: an unknown key is refused, not dropped. */
export const projectSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(1),
  name: name.default('Untitled project'),
  note: z.string().max(LONGEST_NOTE).default(''),
  units: z.enum(['mm', 'ft-in']),
  rooms: z.array(room).min(1, { error: 'needs at least one room' }),
  partitions: reserved,
  receivers: reserved,
  sources: reserved,
  assemblies: z.array(typedAssemblySchema).max(MOST_ASSEMBLIES),
  schemes: z
    .array(z.strictObject({ id, name, choices: z.record(id, choice) }))
    .min(1, { error: 'needs at least one scheme' }),
  proposal: id.nullable().default(null),
  underlays: reserved,
})

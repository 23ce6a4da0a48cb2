import { z } from 'zod'
import { FURNITURE_KINDS, OPENING_KINDS } from '#analysis/room.ts'
import { AIRTIGHTNESS } from '#analysis/scheme.ts'
import { SEAL_CONDITIONS } from '#assemblies/opening.ts'
import { typedAssemblySchema } from '#assemblies/schema.ts'
import {
  LARGEST_MM,
  LARGEST_PX,
  LONGEST_NOTE,
  MOST_ASSEMBLIES,
  MOST_BENDS,
  MOST_HOLES,
  MOST_PEOPLE,
  MOST_REVERBERATION_S,
  MOST_UNDERLAYS,
} from '#project/limits.ts'
import { FORMAT } from '#project/project.ts'
import { allowance, coordinate, depth, id, name, octaveLosses, size, thickness } from '#project/schemaParts.ts'
import { receiverSchema, sourceSchema } from '#project/targetSchema.ts'

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

const leafMade = { type: id, seal: z.enum(SEAL_CONDITIONS) }
const pane = z.strictObject({ thicknessMm: thickness, isLaminated: z.boolean() })
const openingMade = z.strictObject({
  ...leafMade,
  second: z.strictObject(leafMade).optional(),
  panes: z.strictObject({ outer: pane, gapMm: allowance, inner: pane }).optional(),
})

const ductMade = z.strictObject({
  liningMm: allowance,
  linedLengthMm: depth,
  bends: z.number().int().min(0).max(MOST_BENDS),
  silencer: z.strictObject({ name, insertionLossDb: octaveLosses }).nullable(),
})

const duct = z.strictObject({
  id,
  name,
  surface: id,
  purpose: z.enum(['supply', 'return', 'other']),
  shape: z.enum(['round', 'rectangular']),
  widthMm: size,
  heightMm: size,
  lengthMm: size,
  leadsTo: z.array(id),
  made: ductMade,
})

const heightPoint = z.strictObject({
  id,
  xMm: coordinate,
  yMm: coordinate,
  heightMm: size,
  floorMm: coordinate.default(0),
})
const heights = z.array(heightPoint).min(1, { error: 'needs at least one measured height' })
const hinge = z.enum(['from', 'to'])
const swing = z.enum(['in', 'out'])

const opening = z.strictObject({
  id,
  kind: z.enum(OPENING_KINDS),
  name,
  wall: id,
  fromMm: depth,
  widthMm: size,
  heightMm: size,
  sillMm: depth,
  hinge: hinge.default('from'),
  swing: swing.default('in'),
  leaves: z.enum(['one', 'two']).default('one'),
  hungIn: z.enum(['existing', 'lining']).default('existing'),
  lobby: z.strictObject({ hinge, swing }).nullable().default(null),
  revealLiningMm: allowance.default(0),
  shape: z.enum(['rectangular', 'round']).default('rectangular'),
  made: openingMade.optional(),
})

const furniture = z.strictObject({
  id,
  kind: z.enum(FURNITURE_KINDS),
  name,
  xMm: coordinate,
  yMm: coordinate,
  widthMm: size,
  depthMm: size,
  heightMm: size,
  angleDeg: z.number().min(-360).max(360),
  clearance: z.strictObject({ frontMm: depth, backMm: depth, leftMm: depth, rightMm: depth }),
})

const room = z.strictObject({
  id,
  name,
  corners: z
    .array(z.strictObject({ id, xMm: coordinate, yMm: coordinate }))
    .min(3, { error: 'needs at least three corners' }),
  walls: z.array(z.strictObject({ ...facts, from: id, to: id })),
  ceiling: z.strictObject(facts),
  floor: z.strictObject(facts),
  heights,
  ceilingShape: z.enum(['as-measured', 'level']).default('as-measured'),
  ceilingParts: z.array(z.strictObject({ id, name, corners: ring, heights })).default([]),
  obstacles: z.array(z.strictObject({ id, name, corners: ring, liningMm: allowance })),
  drops: z.array(
    z.strictObject({ id, name, corners: ring, undersideMm: size, boxBelowMm: allowance, boxSidesMm: allowance }),
  ),
  openings: z.array(opening),
  furniture: z.array(furniture).default([]),
  diagonals: z.array(z.strictObject({ id, from: id, to: id, measuredMm: size })).default([]),
  ducts: z.array(duct).optional(),
  people: z.number().int().min(0).max(MOST_PEOPLE).optional(),
  reverberationS: z.number().positive().max(MOST_REVERBERATION_S).optional(),
})

const partition = z.strictObject({
  id,
  name,
  construction: id,
  placement: z.enum(['first', 'middle', 'second']),
  sides: z.tuple([z.strictObject({ room: id, wall: id }), z.strictObject({ room: id, wall: id })]),
})

const underlay = z.strictObject({
  id,
  name,
  sha256: z.string().regex(/^[0-9a-f]{64}$/, { error: 'needs the 64 hexadecimal digits of its picture' }),
  mime: z.enum(['image/png', 'image/jpeg']),
  widthPx: z.number().int().positive().max(LARGEST_PX),
  heightPx: z.number().int().positive().max(LARGEST_PX),
  xMm: coordinate,
  yMm: coordinate,
  mmPerPx: z.number().positive().max(LARGEST_MM),
  isCalibrated: z.boolean().optional(),
  angleDeg: z.number().min(-360).max(360),
  opacity: z.number().min(0).max(1),
  isLocked: z.boolean(),
  isShown: z.boolean(),
  /** The picture itself, only in a saved file. */
  dataBase64: z.string().optional(),
})

const choice = z.strictObject({ assembly: id, removeLining: z.boolean(), laidLevel: z.boolean().optional() })

const leaks = z.strictObject({
  gapMm: allowance.optional(),
  holes: z.array(
    z.strictObject({ id, name, diameterMm: thickness, count: z.number().int().positive().max(MOST_HOLES) }),
  ),
})

const box = z.strictObject({
  id,
  name,
  duct: id.nullable(),
  room: id,
  xMm: coordinate,
  yMm: coordinate,
  widthMm: size,
  depthMm: size,
  heightMm: size,
  angleDeg: z.number().min(-360).max(360),
  undersideMm: depth,
})

const scheme = z.strictObject({
  id,
  name,
  choices: z.record(id, choice),
  takenOut: z.array(id).optional(),
  runsThrough: z.record(id, id).optional(),
  openings: z.record(id, openingMade).optional(),
  airtightness: z.enum(AIRTIGHTNESS).optional(),
  leaks: z.record(id, leaks).optional(),
  ducts: z.record(id, ductMade).optional(),
  boxes: z.array(box).optional(),
})

/** Version 1 of the project file, strict: an unknown key is refused, not dropped. */
export const projectSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(1),
  name: name.default('Untitled project'),
  note: z.string().max(LONGEST_NOTE).default(''),
  units: z.enum(['mm', 'ft-in']),
  rooms: z.array(room).min(1, { error: 'needs at least one room' }),
  partitions: z.array(partition),
  receivers: z.array(receiverSchema),
  sources: z.array(sourceSchema),
  assemblies: z.array(typedAssemblySchema).max(MOST_ASSEMBLIES),
  schemes: z.array(scheme).min(1, { error: 'needs at least one scheme' }),
  proposal: id.nullable().default(null),
  underlays: z.array(underlay).max(MOST_UNDERLAYS),
})

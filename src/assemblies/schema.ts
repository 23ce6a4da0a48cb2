import { z } from 'zod'
import type { Assembly, ExistingConstruction, Source } from '#assemblies/assembly.ts'
import type {
  BoardLayer,
  BoardMaterial,
  CavityFrame,
  CavityLayer,
  CavityLink,
  DampingLayer,
  FillerLayer,
  FrameKind,
  Layer,
} from '#assemblies/layer.ts'

/** Every board material, in the order people meet them. */
export const BOARD_MATERIALS: readonly BoardMaterial[] = [
  'gypsum-type-x',
  'gypsum-regular',
  'plywood',
  'osb',
  'glass',
  'laminated-glass',
  'steel-sheet',
  'concrete',
  'concrete-block-hollow',
  'brick',
  'mass-loaded-vinyl',
  'gypsum-concrete',
]

/** A length or weight above zero. */
const positive = z.number().positive()

export const boardMaterialSchema: z.ZodType<BoardMaterial> = z.enum(BOARD_MATERIALS)

const frameKindSchema: z.ZodType<FrameKind> = z.enum([
  'wood-stud',
  'light-steel-stud',
  'load-bearing-steel-stud',
  'masonry',
])

/** How two leaves are tied across a cavity, all lengths mm. */
export const linkSchema: z.ZodType<CavityLink> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('none') }),
  z.strictObject({
    kind: z.enum(['wood-stud', 'light-steel-stud', 'load-bearing-steel-stud', 'staggered-stud']),
    spacingMm: positive,
  }),
  z.strictObject({
    kind: z.literal('resilient-channel'),
    frame: frameKindSchema,
    studSpacingMm: positive.optional(),
    channelSpacingMm: positive,
  }),
  z.strictObject({
    kind: z.enum(['sound-clip', 'low-profile-clip']),
    frame: frameKindSchema,
    rowSpacingMm: positive,
    clipSpacingMm: positive,
  }),
  z.strictObject({
    kind: z.literal('spring-hanger'),
    frame: frameKindSchema,
    rowSpacingMm: positive,
    hangerSpacingMm: positive,
  }),
])

const frameSchema: z.ZodType<CavityFrame> = z.strictObject({
  name: z.string().min(1),
  depthMm: positive,
  massKgM2: z.number().nonnegative(),
  members: z
    .strictObject({
      material: z.enum(['wood', 'light-steel', 'load-bearing-steel']),
      depthMm: positive,
      spacingMm: positive,
    })
    .optional(),
})

const boardShape = z.strictObject({
  kind: z.literal('board'),
  material: boardMaterialSchema,
  thicknessMm: positive,
  surfaceMassKgM2: positive.optional(),
})

const dampingShape = z.strictObject({ kind: z.literal('damping-compound'), thicknessMm: positive.optional() })

const cavityShape = z.strictObject({
  kind: z.literal('cavity'),
  depthMm: positive,
  fill: z.literal('mineral-wool').optional(),
  fillMm: positive.optional(),
  fillAgainst: z.enum(['far', 'room', 'both']).optional(),
  link: linkSchema,
  frame: frameSchema.optional(),
  farFrame: frameSchema.optional(),
})

const fillerShape = z.strictObject({
  kind: z.literal('filler'),
  name: z.string().min(1),
  thicknessMm: positive,
  surfaceMassKgM2: z.number().nonnegative(),
  floats: z.boolean().optional(),
})

export const boardLayerSchema: z.ZodType<BoardLayer> = boardShape
export const dampingLayerSchema: z.ZodType<DampingLayer> = dampingShape
export const cavityLayerSchema: z.ZodType<CavityLayer> = cavityShape
export const fillerLayerSchema: z.ZodType<FillerLayer> = fillerShape

/** One layer of a build-up: lengths mm, weights kg/m2; unknown keys are refused. */
export const layerSchema: z.ZodType<Layer> = z.discriminatedUnion('kind', [
  boardShape,
  dampingShape,
  cavityShape,
  fillerShape,
])

export const sourceSchema: z.ZodType<Source> = z.strictObject({
  text: z.string().min(1),
  status: z.enum(['seen', 'memory', 'common practice, no source', 'derived']),
})

const surfaceKindSchema = z.enum(['wall', 'ceiling', 'floor'])

/** One file of the catalogue of assemblies. */
export const assemblySchema: z.ZodType<Assembly> = z.strictObject({
  id: z.string().min(1),
  name: z.string().min(1),
  shortName: z.string().min(1),
  surface: surfaceKindSchema,
  fixedTo: z.enum(['frame', 'masonry', 'frame-or-lining', 'slab', 'independent', 'any']),
  layers: z.array(layerSchema).min(1),
  layerSources: z.array(sourceSchema).optional(),
  woolInOpenBays: z.boolean(),
  needsBareFrame: z.boolean(),
  loadsExistingJoists: z.boolean(),
  nestedInBays: z.boolean().optional(),
  costBand: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(5)]),
  cautions: z.array(z.string().min(1)),
  source: sourceSchema,
})

/** One file of the catalogue of existing constructions. */
export const existingConstructionSchema: z.ZodType<ExistingConstruction> = z.strictObject({
  id: z.string().min(1),
  name: z.string().min(1),
  surface: surfaceKindSchema,
  structure: z.enum(['wood-frame', 'steel-frame', 'truss', 'masonry', 'slab']),
  layers: z.array(layerSchema).min(1),
  layerSources: z.array(sourceSchema).optional(),
  ventLimitDb: z.number().positive().optional(),
  notes: z.array(z.string().min(1)),
  source: sourceSchema,
})

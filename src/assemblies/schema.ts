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
  'staggered-stud',
  'separate-studs',
])

function linkOf(length: z.ZodNumber): z.ZodType<CavityLink> {
  return z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('none') }),
    z.strictObject({
      kind: z.enum(['wood-stud', 'light-steel-stud', 'load-bearing-steel-stud', 'staggered-stud']),
      spacingMm: length,
    }),
    z.strictObject({
      kind: z.literal('resilient-channel'),
      frame: frameKindSchema,
      studSpacingMm: length.optional(),
      channelSpacingMm: length,
    }),
    z.strictObject({
      kind: z.enum(['sound-clip', 'low-profile-clip']),
      frame: frameKindSchema,
      rowSpacingMm: length,
      clipSpacingMm: length,
    }),
    z.strictObject({
      kind: z.literal('spring-hanger'),
      frame: frameKindSchema,
      rowSpacingMm: length,
      hangerSpacingMm: length,
    }),
  ])
}

/** How two leaves are tied across a cavity, all lengths mm. */
export const linkSchema: z.ZodType<CavityLink> = linkOf(positive)

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

/** What a layer's values have to be: sound ones, or whatever was typed. */
interface LayerValues {
  readonly material: z.ZodType<BoardMaterial>
  readonly length: z.ZodNumber
  readonly fillerMass: z.ZodNumber
}

function layerShapes({ material, length, fillerMass }: LayerValues) {
  return {
    board: z.strictObject({
      kind: z.literal('board'),
      material,
      thicknessMm: length,
      surfaceMassKgM2: length.optional(),
    }),
    damping: z.strictObject({ kind: z.literal('damping-compound'), thicknessMm: length.optional() }),
    cavity: z.strictObject({
      kind: z.literal('cavity'),
      depthMm: length,
      fill: z.literal('mineral-wool').optional(),
      fillMm: length.optional(),
      fillAgainst: z.enum(['far', 'room', 'both']).optional(),
      link: linkOf(length),
      frame: frameSchema.optional(),
      farFrame: frameSchema.optional(),
    }),
    filler: z.strictObject({
      kind: z.literal('filler'),
      name: z.string().min(1),
      thicknessMm: length,
      surfaceMassKgM2: fillerMass,
      floats: z.boolean().optional(),
      dynamicStiffnessMNm3: positive.optional(),
      mountSpacingMm: positive.optional(),
    }),
  }
}

const sound = layerShapes({ material: boardMaterialSchema, length: positive, fillerMass: z.number().nonnegative() })
const typed = layerShapes({
  material: z.custom<BoardMaterial>((value) => typeof value === 'string', { error: 'has to be a string' }),
  length: z.number(),
  fillerMass: z.number(),
})

export const boardLayerSchema: z.ZodType<BoardLayer> = sound.board
export const dampingLayerSchema: z.ZodType<DampingLayer> = sound.damping
export const cavityLayerSchema: z.ZodType<CavityLayer> = sound.cavity
export const fillerLayerSchema: z.ZodType<FillerLayer> = sound.filler

/** One layer of a build-up: lengths mm, weights kg/m2; unknown keys are refused. */
export const layerSchema: z.ZodType<Layer> = z.discriminatedUnion('kind', [
  sound.board,
  sound.damping,
  sound.cavity,
  sound.filler,
])

/** A layer of the right shape whose numbers and material still have to be judged, by `layerProblems`. */
export const typedLayerSchema: z.ZodType<Layer> = z.discriminatedUnion('kind', [
  typed.board,
  typed.damping,
  typed.cavity,
  typed.filler,
])

export const sourceSchema: z.ZodType<Source> = z.strictObject({
  text: z.string().min(1),
  status: z.enum(['seen', 'memory', 'common practice, no source', 'derived']),
})

const surfaceKindSchema = z.enum(['wall', 'ceiling', 'floor'])

function assemblyShape(layer: z.ZodType<Layer>): z.ZodType<Assembly> {
  return z.strictObject({
    id: z.string().min(1),
    name: z.string().min(1),
    shortName: z.string().min(1),
    surface: surfaceKindSchema,
    fixedTo: z.enum(['frame', 'masonry', 'frame-or-lining', 'slab', 'independent', 'any']),
    layers: z.array(layer).min(1),
    layerSources: z.array(sourceSchema).optional(),
    woolInOpenBays: z.boolean(),
    needsBareFrame: z.boolean(),
    loadsExistingJoists: z.boolean(),
    nestedInBays: z.boolean().optional(),
    costBand: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(5)]),
    cautions: z.array(z.string().min(1)),
    source: sourceSchema,
  })
}

/** One file of the catalogue of assemblies. */
export const assemblySchema: z.ZodType<Assembly> = assemblyShape(layerSchema)

/** An assembly somebody wrote or typed: the same shape; `ownAssemblyProblems` judges what stands in it. */
export const typedAssemblySchema: z.ZodType<Assembly> = assemblyShape(typedLayerSchema)

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

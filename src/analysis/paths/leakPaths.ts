import { flatCurve } from '#acoustics/curve.ts'
import { holeLoss, slitLoss } from '#acoustics/leak.ts'
import table from '#analysis/data/airtightness.json' with { type: 'json' }
import type { Path } from '#analysis/paths/answer.ts'
import { named } from '#analysis/paths/names.ts'
import { type Crossed, endsAt, type Found, NOTHING, type PathSetting } from '#analysis/paths/setting.ts'
import type { Airtightness, Hole, Leaks, Scheme } from '#analysis/scheme.ts'
import { layersDepth } from '#assemblies/layer.ts'
import type { Millimetres, SquareMetres } from '#units/quantity.ts'

/** Airtightness where nobody has chosen one. */
export const USUAL_AIRTIGHTNESS: Airtightness = 'ordinary'

/** What an airtightness takes for granted of every joint; data/airtightness.json, own choice. */
export interface Joint {
  readonly name: string
  /** A full sentence: what is built, and what that is counted as. */
  readonly means: string
  /** Width of the gap where it is open, right through. */
  readonly gapMm: Millimetres
  /** Of the joint's length, what is open; 0..1. */
  readonly openShare: number
  readonly source: string
  readonly status: string
}

export function jointOf(airtightness: Airtightness): Joint {
  return table.gap[airtightness]
}

const ASSUMED_GAP_SD = flatCurve(table.sdDb.assumedGap.value)
const TYPED_GAP_SD = flatCurve(table.sdDb.typedGap.value)
const HOLE_SD = flatCurve(table.sdDb.hole.value)

/** The ways past the edges of surfaces and through the holes in them. */
export function leakPaths(setting: PathSetting): Found {
  const paths = setting.crossed.flatMap((one) => {
    if (one.surface.rating === null) return []
    const holes = leaksOf(setting.input.scheme, one.surface.id)?.holes ?? []
    return [...gapPath(setting, one), ...holes.flatMap((hole) => holePath(setting, one, hole))]
  })
  return { ...NOTHING, paths }
}

/** What a scheme says of the leaks of one surface. */
export function leaksOf(scheme: Pick<Scheme, 'leaks'>, surface: string): Leaks | undefined {
  return scheme.leaks && Object.hasOwn(scheme.leaks, surface) ? scheme.leaks[surface] : undefined
}

/** What stands open in a surface, and its loss for its own area. */
export type Leak = Pick<Path, 'areaM2' | 'lossDb'>

/** The gap round a surface in a scheme, as typed for it or as airtightness says; null: closed. */
export function gapIn(
  scheme: Pick<Scheme, 'airtightness' | 'leaks'>,
  { surface, perimeterMm, grossM2 }: Omit<Crossed, 'through'>,
): (Leak & { readonly isTyped: boolean }) | null {
  const typedMm = leaksOf(scheme, surface.id)?.gapMm
  const usual = jointOf(scheme.airtightness ?? USUAL_AIRTIGHTNESS)
  const { gapMm, openShare } = typedMm === undefined ? usual : { gapMm: typedMm, openShare: 1 }
  const areaM2: SquareMetres = Math.min((gapMm * perimeterMm * openShare) / 1e6, grossM2)
  if (!(areaM2 > 0)) return null
  return { areaM2, lossDb: gapLoss(gapMm, layersDepth(surface.layers)), isTyped: typedMm !== undefined }
}

/** Holes of one name in a surface; null: there is nothing open. */
export function holeIn({ surface, grossM2 }: Omit<Crossed, 'through'>, { diameterMm, count }: Hole): Leak | null {
  if (!(diameterMm > 0 && count > 0 && grossM2 > 0)) return null
  return {
    areaM2: Math.min((count * (Math.PI / 4) * diameterMm ** 2) / 1e6, grossM2),
    lossDb: holeLoss({ diameterMm, depthMm: layersDepth(surface.layers) }),
  }
}

function gapPath({ input, receiver }: PathSetting, one: Crossed): readonly Path[] {
  const gap = gapIn(input.scheme, one)
  if (!gap) return []
  const { surface, through } = one
  return [
    {
      id: `leak:${surface.id}`,
      kind: 'leak',
      label: `The gap round ${named(surface.label)}`,
      element: surface.id,
      areaM2: gap.areaM2,
      lossDb: gap.lossDb,
      sdDb: gap.isTyped ? TYPED_GAP_SD : ASSUMED_GAP_SD,
      basis: gap.isTyped ? 'typed' : 'assumed',
      ...endsAt(receiver, through),
      notes: [],
    },
  ]
}

/** The last loss of a gap at every depth: all edges of a room share one gap and few depths. */
const gaps = new Map<string, Path['lossDb']>()
const MOST_GAPS = 200

function gapLoss(widthMm: Millimetres, depthMm: Millimetres): Path['lossDb'] {
  const key = `${widthMm} ${depthMm}`
  const found = gaps.get(key)
  if (found) return found
  if (gaps.size >= MOST_GAPS) gaps.clear()
  const loss = slitLoss({ widthMm, depthMm, place: 'edge' })
  gaps.set(key, loss)
  return loss
}

function holePath({ receiver }: PathSetting, one: Crossed, hole: Hole): readonly Path[] {
  const open = holeIn(one, hole)
  if (!open) return []
  const { surface, through } = one
  return [
    {
      id: `hole:${surface.id}:${hole.id}`,
      kind: 'leak',
      label: `${hole.name} in ${named(surface.label)}`,
      element: surface.id,
      ...open,
      sdDb: HOLE_SD,
      basis: 'calculated',
      ...endsAt(receiver, through),
      notes: [],
    },
  ]
}

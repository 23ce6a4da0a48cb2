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
    const depthMm = layersDepth(one.surface.layers)
    const leaks = leaksOf(setting.input.scheme, one.surface.id)
    return [
      ...gapPath(setting, one, leaks, depthMm),
      ...(leaks?.holes ?? []).flatMap((hole) => holePath(setting, one, hole, depthMm)),
    ]
  })
  return { ...NOTHING, paths }
}

function leaksOf(scheme: Scheme, surface: string): Leaks | undefined {
  return scheme.leaks && Object.hasOwn(scheme.leaks, surface) ? scheme.leaks[surface] : undefined
}

function gapPath(
  { input, receiver }: PathSetting,
  { surface, through, perimeterMm, grossM2 }: Crossed,
  leaks: Leaks | undefined,
  depthMm: Millimetres,
): readonly Path[] {
  const typedMm = leaks?.gapMm
  const usual = jointOf(input.scheme.airtightness ?? USUAL_AIRTIGHTNESS)
  const { gapMm, openShare } = typedMm === undefined ? usual : { gapMm: typedMm, openShare: 1 }
  const areaM2: SquareMetres = Math.min((gapMm * perimeterMm * openShare) / 1e6, grossM2)
  if (!(areaM2 > 0)) return []
  return [
    {
      id: `leak:${surface.id}`,
      kind: 'leak',
      label: `The gap round ${named(surface.label)}`,
      element: surface.id,
      areaM2,
      lossDb: gapLoss(gapMm, depthMm),
      sdDb: typedMm === undefined ? ASSUMED_GAP_SD : TYPED_GAP_SD,
      basis: typedMm === undefined ? 'assumed' : 'typed',
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

function holePath(
  { receiver }: PathSetting,
  { surface, through, grossM2 }: Crossed,
  hole: Hole,
  depthMm: Millimetres,
): readonly Path[] {
  const { diameterMm, count } = hole
  if (!(diameterMm > 0 && count > 0 && grossM2 > 0)) return []
  return [
    {
      id: `hole:${surface.id}:${hole.id}`,
      kind: 'leak',
      label: `${hole.name} in ${named(surface.label)}`,
      element: surface.id,
      areaM2: Math.min((count * (Math.PI / 4) * diameterMm ** 2) / 1e6, grossM2),
      lossDb: holeLoss({ diameterMm, depthMm }),
      sdDb: HOLE_SD,
      basis: 'calculated',
      ...endsAt(receiver, through),
      notes: [],
    },
  ]
}

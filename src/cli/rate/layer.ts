import type { z } from 'zod'
import type { Layer } from '#assemblies/layer.ts'
import { BOARD_MATERIALS, typedLayerSchema } from '#assemblies/schema.ts'
import { keysOf, LINK_KINDS, listed, sentenceOf } from '#cli/rate/words.ts'

/** One layer as it was written. */
export interface ReadLayer {
  /** As it was meant where that can be told, to judge its place among the others; null: of no known kind. */
  readonly layer: Layer | null
  /** " (cavity)", to stand after its number; empty where its kind is not known. */
  readonly name: string
  /** What is wrong with its form; its numbers and its place are judged by `layerProblems`. */
  readonly problems: readonly string[]
}

/** A sound layer of each kind: its values stand in for those that cannot be read, so that all others are judged too. */
export const STAND_INS: Readonly<Record<Layer['kind'], Layer>> = {
  board: { kind: 'board', material: 'gypsum-regular', thicknessMm: 12.7 },
  'damping-compound': { kind: 'damping-compound' },
  cavity: { kind: 'cavity', depthMm: 90, link: { kind: 'none' } },
  filler: { kind: 'filler', name: 'filler', thicknessMm: 10, surfaceMassKgM2: 1 },
}

const KINDS: readonly string[] = Object.keys(STAND_INS)

export function readLayer(written: unknown): ReadLayer {
  if (typeof written !== 'object' || written === null || Array.isArray(written)) {
    const text = 'a layer has to be an object such as {"kind":"board","material":"gypsum-type-x","thicknessMm":15.875}'
    return { layer: null, name: '', problems: [text] }
  }
  const value = withHangerSpacing(written)
  const kind = kindOf(value)
  if (kind === null) {
    const written = 'kind' in value ? `its kind is ${JSON.stringify(value.kind)}` : 'it has no "kind"'
    return { layer: null, name: '', problems: [`${written}; a layer's kind can be ${listed(KINDS)}`] }
  }
  const name = ` (${kind === 'damping-compound' ? 'damping compound' : kind})`
  const misfit = materialFault(value) ?? linkFault(value)
  const read = typedLayerSchema.safeParse(value)
  if (read.success && misfit === null) return { layer: read.data, name, problems: [] }
  const issues = read.success ? [] : read.error.issues.filter((issue) => misfit === null || !isToldBy(issue, misfit.at))
  const problems = [...(misfit ? [misfit.text] : []), ...issues.map((issue) => sentenceOf(issue, value, kind))]
  const wrong = new Set([...(misfit ? [misfit.at] : []), ...issues.flatMap(keysAt)])
  return { layer: mended(value, STAND_INS[kind], wrong), name, problems }
}

/** A hanger's spacing may be written as a clip's: the input format leaves the name open. */
function withHangerSpacing(layer: object): object {
  const link = 'link' in layer ? layer.link : undefined
  if (typeof link !== 'object' || link === null || !('kind' in link) || link.kind !== 'spring-hanger') return layer
  if (!('clipSpacingMm' in link) || 'hangerSpacingMm' in link) return layer
  const { clipSpacingMm, ...rest } = link
  return { ...layer, link: { ...rest, hangerSpacingMm: clipSpacingMm } }
}

/** The keys of the layer that an issue speaks of. */
function keysAt(issue: z.core.$ZodIssue): readonly PropertyKey[] {
  if (issue.path.length === 0 && issue.code === 'unrecognized_keys') return issue.keys
  return issue.path.slice(0, 1)
}

/** The layer with what cannot be read replaced by what surely can: only for judging the rest of it. */
function mended(value: object, standIn: Layer, wrong: ReadonlySet<PropertyKey>): Layer {
  // Without a depth or a fill there is nothing to say of how deep the fill is.
  const dropped = wrong.has('depthMm') || wrong.has('fill') ? [...wrong, 'fill', 'fillMm'] : [...wrong]
  const kept = Object.entries(value).filter(([key]) => !dropped.includes(key))
  const read = typedLayerSchema.safeParse({ ...standIn, ...Object.fromEntries(kept) })
  return read.success ? read.data : standIn
}

function kindOf(value: object): Layer['kind'] | null {
  const kind = 'kind' in value ? value.kind : undefined
  return typeof kind === 'string' && isKind(kind) ? kind : null
}

function isKind(kind: string): kind is Layer['kind'] {
  return KINDS.includes(kind)
}

/** A fault that says better what a schema would say. */
interface Misfit {
  readonly at: 'material' | 'link'
  readonly text: string
}

function isToldBy(issue: z.core.$ZodIssue, at: Misfit['at']): boolean {
  return issue.path[0] === at
}

function materialFault(value: object): Misfit | null {
  const material = 'material' in value ? value.material : undefined
  if (typeof material !== 'string' || BOARD_MATERIALS.some((known) => known === material)) return null
  return { at: 'material', text: `the material "${material}" is not known; it can be ${listed(BOARD_MATERIALS)}` }
}

function linkFault(value: object): Misfit | null {
  if (kindOf(value) !== 'cavity') return null
  const link = 'link' in value ? value.link : undefined
  const known = `the kind of a link can be ${listed(LINK_KINDS)}`
  if (link === undefined || link === null) {
    return { at: 'link', text: `it needs a "link", {"kind":"none"} where nothing ties the leaves; ${known}` }
  }
  if (typeof link !== 'object' || Array.isArray(link)) {
    return { at: 'link', text: `"link" has to be an object such as {"kind":"none"}; ${known}` }
  }
  const kind = 'kind' in link ? link.kind : undefined
  if (typeof kind === 'string' && keysOf(kind) !== null) return null
  const written = kind === undefined ? 'its link has no "kind"' : `the link ${JSON.stringify(kind)} is not known`
  return { at: 'link', text: `${written}; ${known}` }
}

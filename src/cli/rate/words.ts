import type { z } from 'zod'
import type { Layer } from '#assemblies/layer.ts'

/** Keys of a link by its kind, besides `kind`; a question mark: may be left out. */
const LINK_KEYS = {
  none: [],
  'wood-stud': ['spacingMm'],
  'light-steel-stud': ['spacingMm'],
  'load-bearing-steel-stud': ['spacingMm'],
  'staggered-stud': ['spacingMm'],
  'resilient-channel': ['frame', 'channelSpacingMm', 'studSpacingMm?'],
  'sound-clip': ['frame', 'rowSpacingMm', 'clipSpacingMm'],
  'low-profile-clip': ['frame', 'rowSpacingMm', 'clipSpacingMm'],
  'spring-hanger': ['frame', 'rowSpacingMm', 'hangerSpacingMm'],
} as const satisfies Record<string, readonly string[]>

const KEYS_BY_LINK: ReadonlyMap<string, readonly string[]> = new Map(Object.entries(LINK_KEYS))

const LAYER_KEYS: Readonly<Record<Layer['kind'], readonly string[]>> = {
  board: ['material', 'thicknessMm', 'surfaceMassKgM2?'],
  'damping-compound': ['thicknessMm?'],
  cavity: ['depthMm', 'link', 'fill?', 'fillMm?', 'fillAgainst?', 'frame?', 'farFrame?'],
  filler: ['name', 'thicknessMm', 'surfaceMassKgM2', 'floats?', 'dynamicStiffnessMNm3?', 'mountSpacingMm?'],
}

const FRAME_KEYS = ['name', 'depthMm', 'massKgM2', 'members?']
const MEMBER_KEYS = ['material', 'depthMm', 'spacingMm']

export const LINK_KINDS: readonly string[] = [...KEYS_BY_LINK.keys()]

/** Keys of a link; null: there is no link of that kind. */
export function keysOf(linkKind: string): readonly string[] | null {
  return KEYS_BY_LINK.get(linkKind) ?? null
}

/** board, cavity or filler */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`
}

/** What a schema found wrong with a layer whose kind and link are known, in words that follow the layer's name. */
export function sentenceOf(issue: z.core.$ZodIssue, layer: object, kind: Layer['kind']): string {
  const part = partAt(issue.code === 'unrecognized_keys' ? issue.path : issue.path.slice(0, -1), layer, kind)
  if (issue.code === 'unrecognized_keys') {
    const unknown = issue.keys.map((key) => `"${key}"`).join(', ')
    return `${part.name} has no key ${unknown}; it has ${part.keys}`
  }
  const what = `"${issue.path.map(String).join('.')}"`
  const written = valueAt(layer, issue.path)
  if (written === undefined) return `${part.name} needs ${what}; it has ${part.keys}`
  return `${what} is ${writtenAs(written)}; it has to be ${wantedBy(issue)}`
}

/** What a place in a layer is called, and its keys in words. */
function partAt(path: readonly PropertyKey[], layer: object, kind: Layer['kind']): { name: string; keys: string } {
  const [first] = path
  if (first === undefined) return { name: 'it', keys: keyWords(['kind', ...LAYER_KEYS[kind]]) }
  if (first === 'link') {
    const link = String(valueAt(layer, ['link', 'kind']))
    return { name: `the link ${link}`, keys: keyWords(['kind', ...(keysOf(link) ?? [])]) }
  }
  const isMembers = path.length > 1
  return { name: isMembers ? 'its row of studs' : 'its frame', keys: keyWords(isMembers ? MEMBER_KEYS : FRAME_KEYS) }
}

function keyWords(keys: readonly string[]): string {
  const optional = keys.filter((key) => key.endsWith('?')).map((key) => key.slice(0, -1))
  const needed = keys.filter((key) => !key.endsWith('?')).join(', ')
  return optional.length === 0 ? needed : `${needed} and, if wanted, ${optional.join(', ')}`
}

function wantedBy(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return WANTED_TYPES.get(issue.expected) ?? `of the type ${issue.expected}`
    case 'invalid_value':
      return listed(issue.values.map((value) => JSON.stringify(value)))
    case 'too_small':
      if (issue.origin !== 'number') return 'a text that is not empty'
      return `${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}`
    default:
      return 'a text'
  }
}

/** As it stood in the input; 1e999 reads as infinity, which JSON cannot write back. */
export function writtenAs(value: unknown): string {
  return typeof value === 'number' ? String(value) : JSON.stringify(value)
}

const WANTED_TYPES: ReadonlyMap<string, string> = new Map([
  ['number', 'a number'],
  ['string', 'a text'],
  ['boolean', 'true or false'],
  ['object', 'an object'],
])

function valueAt(layer: object, path: readonly PropertyKey[]): unknown {
  let value: unknown = layer
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined
    value = new Map<PropertyKey, unknown>(Object.entries(value)).get(step)
  }
  return value
}

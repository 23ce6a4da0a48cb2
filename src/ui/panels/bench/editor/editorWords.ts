import { materialAt } from '#acoustics/materials.ts'
import type { Assembly, SurfaceKind } from '#assemblies/assembly.ts'
import type { BoardMaterial, CavityLayer, CavityLink, Layer } from '#assemblies/layer.ts'
import { layerDepth } from '#assemblies/layer.ts'
import { BOARD_MATERIALS } from '#assemblies/schema.ts'
import { LINK_KINDS, type LinkKind, type MemberMaterial } from '#assemblies/usualLayer.ts'
import type { Option } from '#ui/fields/ChoiceField.tsx'
import { capital } from '#ui/panels/words.ts'
import { formatThickness } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

export const KIND_OPTIONS: readonly Option<Layer['kind']>[] = [
  { value: 'board', text: 'Board or slab' },
  { value: 'cavity', text: 'Cavity' },
  { value: 'damping-compound', text: 'Damping compound' },
  { value: 'filler', text: 'Filler' },
]

export const MATERIAL_OPTIONS: readonly Option<BoardMaterial>[] = BOARD_MATERIALS.map((value) => ({
  value,
  text: capital(materialName(value)),
}))

const LINK_WORDS: Readonly<Record<LinkKind, string>> = {
  none: 'nothing ties it',
  'wood-stud': 'wood studs through both',
  'light-steel-stud': 'light steel studs through both',
  'load-bearing-steel-stud': 'load-bearing steel studs through both',
  'staggered-stud': 'staggered studs on a shared plate',
  'resilient-channel': 'resilient channel',
  'sound-clip': 'sound clips and channel',
  'low-profile-clip': 'low-profile clips and channel',
  'spring-hanger': 'spring hangers',
}

export const LINK_OPTIONS: readonly Option<LinkKind>[] = LINK_KINDS.map((value) => ({
  value,
  text: capital(LINK_WORDS[value]),
}))

export const ROW_OPTIONS: readonly Option<MemberMaterial | 'nothing'>[] = [
  { value: 'nothing', text: 'Nothing' },
  { value: 'wood', text: 'Its own wood studs or joists' },
  { value: 'light-steel', text: 'Its own light steel studs' },
  { value: 'load-bearing-steel', text: 'Its own load-bearing steel studs' },
]

export const FILL_AGAINST: readonly Option<NonNullable<CavityLayer['fillAgainst']> | 'usual'>[] = [
  { value: 'usual', text: 'As is usual for the link' },
  { value: 'far', text: 'Against the far side' },
  { value: 'room', text: 'Against the room side' },
  { value: 'both', text: 'On both sides' },
]

export const FIXED_TO_OPTIONS: readonly Option<Assembly['fixedTo']>[] = [
  { value: 'frame', text: 'Bare studs or joists' },
  { value: 'frame-or-lining', text: 'Studs or joists, bare or lined' },
  { value: 'masonry', text: 'Masonry or concrete' },
  { value: 'slab', text: 'A concrete slab' },
  { value: 'independent', text: 'Nothing: it stands on its own' },
  { value: 'any', text: 'Anything' },
]

export const COST_OPTIONS: readonly Option<'1' | '2' | '3' | '4' | '5'>[] = [
  { value: '1', text: '1, least' },
  { value: '2', text: '2' },
  { value: '3', text: '3, middle' },
  { value: '4', text: '4' },
  { value: '5', text: '5, most' },
]

/** Gypsum board, type X */
export function materialName(material: BoardMaterial): string {
  return materialAt(material, 1000).name
}

/** What a layer is, in a few words: gypsum board, type X · cavity, sound clips and channel. */
export function layerWords(layer: Layer): string {
  switch (layer.kind) {
    case 'board':
      return materialName(layer.material)
    case 'cavity':
      return `cavity, ${standsWords(layer)}${layer.fill === undefined ? '' : ', wool'}`
    case 'damping-compound':
      return 'damping compound'
    case 'filler':
      return layer.floats ? `${layer.name}, floats` : layer.name
    default:
      return unreachable(layer)
  }
}

/** 15.9 mm gypsum board, type X */
export function layerLine(layer: Layer, unit: LengthUnit): string {
  return `${formatThickness(layerDepth(layer), unit)} ${layerWords(layer)}`
}

/** What stands in a cavity, or ties it. */
export function standsWords({ link, frame }: CavityLayer): string {
  if (link.kind !== 'none') return LINK_WORDS[link.kind]
  return frame === undefined ? 'empty' : `${frame.name}, untied`
}

/** Every spacing of a link with what it is called. */
export function spacingWords(link: CavityLink): readonly (readonly [name: string, mm: number])[] {
  switch (link.kind) {
    case 'none':
      return []
    case 'wood-stud':
    case 'light-steel-stud':
    case 'load-bearing-steel-stud':
    case 'staggered-stud':
      return [['studs', link.spacingMm]]
    case 'resilient-channel':
      return [
        ['channel', link.channelSpacingMm],
        ...(link.studSpacingMm === undefined ? [] : [['studs behind', link.studSpacingMm] as const]),
      ]
    case 'sound-clip':
    case 'low-profile-clip':
      return [
        ['rows', link.rowSpacingMm],
        ['clips', link.clipSpacingMm],
      ]
    case 'spring-hanger':
      return [
        ['rows', link.rowSpacingMm],
        ['hangers', link.hangerSpacingMm],
      ]
    default:
      return unreachable(link)
  }
}

const SURFACE_WORDS: Readonly<Record<SurfaceKind, string>> = { wall: 'a wall', ceiling: 'a ceiling', floor: 'a floor' }

export function surfaceWords(surface: SurfaceKind): string {
  return SURFACE_WORDS[surface]
}

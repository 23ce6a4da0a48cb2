import usual from '#assemblies/data/usual.json' with { type: 'json' }
import type {
  BoardLayer,
  BoardMaterial,
  CavityFrame,
  CavityLayer,
  CavityLink,
  FillerLayer,
  FrameMembers,
  Layer,
} from '#assemblies/layer.ts'
import type { KilogramsPerSquareMetre, LengthUnit, Millimetres } from '#units/quantity.ts'

export type LinkKind = CavityLink['kind']
export type MemberMaterial = FrameMembers['material']

/** Every way two leaves can be tied, least tied first. */
export const LINK_KINDS: readonly LinkKind[] = [
  'none',
  'sound-clip',
  'low-profile-clip',
  'resilient-channel',
  'spring-hanger',
  'staggered-stud',
  'light-steel-stud',
  'load-bearing-steel-stud',
  'wood-stud',
]

/** A board at the thickness it is usually met with; it weighs what its density says. @source data/usual.json */
export function usualBoard(material: BoardMaterial): BoardLayer {
  return { kind: 'board', material, thicknessMm: usual.boardMm[material] }
}

/** An empty gap that nothing bridges. @source data/usual.json */
export function usualCavity(unit: LengthUnit): CavityLayer {
  return { kind: 'cavity', depthMm: usual.cavityMm[unit], link: { kind: 'none' } }
}

/** A layer of another kind, as it is first offered. */
export function usualLayer(kind: Layer['kind'], unit: LengthUnit): Layer {
  switch (kind) {
    case 'board':
      return usualBoard('gypsum-type-x')
    case 'cavity':
      return usualCavity(unit)
    case 'damping-compound':
      return { kind: 'damping-compound' }
    case 'filler':
      return FILLER
  }
}

/** Depth and weight of a thin finish. @source common practice, no source */
const FILLER: FillerLayer = { kind: 'filler', name: 'filler', thicknessMm: 12.7, surfaceMassKgM2: 1 }

/** A cavity as deep as this; hardware and studs that fill it follow, studs of their own row stay as they are. */
export function withDepth(cavity: CavityLayer, depthMm: Millimetres): CavityLayer {
  const { frame } = cavity
  if (frame === undefined) return { ...cavity, depthMm }
  if (cavity.link.kind === 'none' && frame.depthMm < cavity.depthMm) return { ...cavity, depthMm }
  const filled = { ...frame, depthMm }
  if (frame.members === undefined || !isTied(cavity.link)) return { ...cavity, depthMm, frame: filled }
  return { ...cavity, depthMm, frame: studFrame({ ...frame.members, depthMm }, depthMm) }
}

/** A cavity tied in another way, with that link's usual spacings and what stands in it. */
export function withLink(cavity: CavityLayer, kind: LinkKind, unit: LengthUnit): CavityLayer {
  const { frame: _, ...bare } = cavity
  const link = usualLink(kind, unit)
  const frame = frameFor(link, cavity.depthMm)
  return frame === null ? { ...bare, link } : { ...bare, link, frame }
}

/** A cavity with another link of the same kind: spacings changed; studs it is made of follow. */
export function withSpacings(cavity: CavityLayer, link: CavityLink): CavityLayer {
  const members = cavity.frame?.members
  if (cavity.frame === undefined || members === undefined || !('spacingMm' in link)) return { ...cavity, link }
  const moved = { ...members, spacingMm: link.spacingMm }
  return { ...cavity, link, frame: studFrame(moved, cavity.frame.depthMm) }
}

/** A cavity with a row of studs of its own that touch nothing on the far side; null: an empty one. */
export function withOwnRow(cavity: CavityLayer, material: MemberMaterial | null, unit: LengthUnit): CavityLayer {
  const { frame: _, ...bare } = cavity
  if (material === null) return bare
  const depthMm = usual.studMm[material]
  const members = { material, depthMm, spacingMm: usual.spacingMm[unit].ownStud }
  return { ...bare, frame: studFrame(members, depthMm) }
}

/** A cavity whose studs are others; nested ones reach beyond it, so only their part inside counts as its frame. */
export function withMembers(cavity: CavityLayer, members: FrameMembers): CavityLayer {
  const reachesOut = cavity.link.kind === 'staggered-stud' || (cavity.frame?.members?.depthMm ?? 0) > cavity.depthMm
  const inside = reachesOut ? Math.min(cavity.depthMm, members.depthMm) : members.depthMm
  return { ...cavity, frame: studFrame(members, inside) }
}

/** What ties two leaves straight through: its studs are as deep as the cavity. */
function isTied(link: CavityLink): boolean {
  return link.kind === 'wood-stud' || link.kind === 'light-steel-stud' || link.kind === 'load-bearing-steel-stud'
}

function usualLink(kind: LinkKind, unit: LengthUnit): CavityLink {
  const { stud, steelStud, channel, row, clip, hanger } = usual.spacingMm[unit]
  switch (kind) {
    case 'none':
      return { kind }
    case 'wood-stud':
    case 'staggered-stud':
      return { kind, spacingMm: stud }
    case 'light-steel-stud':
    case 'load-bearing-steel-stud':
      return { kind, spacingMm: steelStud }
    case 'resilient-channel':
      return { kind, frame: 'wood-stud', studSpacingMm: stud, channelSpacingMm: channel }
    case 'sound-clip':
    case 'low-profile-clip':
      return { kind, frame: 'wood-stud', rowSpacingMm: row, clipSpacingMm: clip }
    case 'spring-hanger':
      return { kind, frame: 'wood-stud', rowSpacingMm: hanger, hangerSpacingMm: hanger }
  }
}

/** What stands in a cavity tied like this; null: nothing that is known. */
function frameFor(link: CavityLink, depthMm: Millimetres): CavityFrame | null {
  switch (link.kind) {
    case 'none':
      return null
    case 'wood-stud':
      return studFrame({ material: 'wood', depthMm, spacingMm: link.spacingMm }, depthMm)
    case 'light-steel-stud':
      return studFrame({ material: 'light-steel', depthMm, spacingMm: link.spacingMm }, depthMm)
    case 'load-bearing-steel-stud':
      return studFrame({ material: 'load-bearing-steel', depthMm, spacingMm: link.spacingMm }, depthMm)
    case 'staggered-stud':
      return studFrame({ material: 'wood', depthMm: usual.studMm.wood, spacingMm: link.spacingMm }, depthMm)
    case 'resilient-channel':
      return hardware('resilient channel', link.kind, depthMm)
    case 'sound-clip':
      return hardware('sound clips and channel', link.kind, depthMm)
    case 'low-profile-clip':
      return hardware('low-profile clips and channel', link.kind, depthMm)
    case 'spring-hanger':
      return hardware('spring hangers, carriers and channel', link.kind, depthMm)
  }
}

function hardware(
  name: string,
  kind: 'resilient-channel' | 'sound-clip' | 'low-profile-clip' | 'spring-hanger',
  depthMm: Millimetres,
): CavityFrame {
  return { name, depthMm, massKgM2: usual.hardwareKgM2[kind] }
}

const MEMBER_NAMES: Readonly<Record<MemberMaterial, string>> = {
  wood: 'wood studs',
  'light-steel': 'light steel studs',
  'load-bearing-steel': 'load-bearing steel studs',
}

/** @param depthMm the part of the row that stands in the cavity */
function studFrame(members: FrameMembers, depthMm: Millimetres): CavityFrame {
  return { name: MEMBER_NAMES[members.material], depthMm, massKgM2: studMass(members), members }
}

/** Weight of a row of studs over its area, kg/m2, plates not counted. @source data/usual.json */
export function studMass({ material, depthMm, spacingMm }: FrameMembers): KilogramsPerSquareMetre {
  if (!(spacingMm > 0 && depthMm > 0)) return 0
  if (material !== 'wood') return usual.steelStudKgM[material] / (spacingMm / 1000)
  const { widthMm, densityKgM3 } = usual.woodStud
  return ((widthMm / 1000) * (depthMm / 1000) * densityKgM3) / (spacingMm / 1000)
}

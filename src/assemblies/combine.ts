import type { Assembly, ExistingConstruction } from '#assemblies/assembly.ts'
import { type CombineNote, combineNotes } from '#assemblies/combineNotes.ts'
import type { BoardLayer, CavityFrame, CavityLayer, CavityLink, FrameKind, Layer } from '#assemblies/layer.ts'
import type { Millimetres } from '#units/quantity.ts'

export interface Combination {
  readonly existing: ExistingConstruction
  /** The existing lining where it is kept; null where there is none or it comes off. */
  readonly lining: BoardLayer | null
  /** null: the surface stays as it is. */
  readonly assembly: Assembly | null
}

export interface CombinedLayers {
  /** Far side to room. */
  readonly layers: readonly Layer[]
  /** How many of them, from the far side, stand today; a cavity that reaches into the assembly counts as standing. */
  readonly existingLayerCount: number
  readonly notes: readonly CombineNote[]
}

/**
 * Existing construction, kept lining and assembly as one build-up. Where an open frame meets the assembly's cavity
 * the two become one: depths add, wool adds, and the assembly's link ties the leaves while the old studs only stiffen
 * the far one. Where the assembly begins with a board on an open frame, the frame goes on tying both sides.
 * A kept lining stays a leaf of its own.
 */
export function combineLayers(combination: Combination): CombinedLayers {
  const { existing, lining, assembly } = combination
  const standing: readonly Layer[] = lining === null ? existing.layers : [...existing.layers, lining]
  const layers = assembly === null ? standing : joinLayers(standing, assembly, existing)
  return { layers, existingLayerCount: standing.length, notes: combineNotes(combination) }
}

function joinLayers(standing: readonly Layer[], assembly: Assembly, existing: ExistingConstruction): Layer[] {
  const added = assembly.layers.map((layer) =>
    layer.kind === 'cavity' ? { ...layer, link: linkOn(existing, layer.link) } : layer,
  )
  const bay = standing.at(-1)
  if (bay?.kind !== 'cavity') return [...standing, ...added]
  const filledBay = assembly.woolInOpenBays ? withWoolInBay(bay) : bay
  const [first, ...rest] = added
  if (first?.kind !== 'cavity') return [...standing.slice(0, -1), filledBay, ...added]
  return [...standing.slice(0, -1), mergeCavities(filledBay, first), ...rest]
}

/** The link as it is on this structure: channel and clips stand on whatever frame or masonry is there. */
export function linkOn(existing: ExistingConstruction, link: CavityLink): CavityLink {
  if (!('frame' in link)) return link
  const frame = frameKind(existing)
  if (link.kind !== 'resilient-channel') return { ...link, frame }
  const { studSpacingMm, ...channel } = link
  const spacing = frame === 'masonry' ? undefined : (frameSpacing(existing) ?? studSpacingMm)
  return spacing === undefined ? { ...channel, frame } : { ...channel, frame, studSpacingMm: spacing }
}

function frameKind(existing: ExistingConstruction): FrameKind {
  switch (existing.structure) {
    case 'wood-frame':
    case 'truss':
      return 'wood-stud'
    case 'steel-frame':
      return existing.layers.some((layer) => layer.kind === 'cavity' && layer.link.kind === 'load-bearing-steel-stud')
        ? 'load-bearing-steel-stud'
        : 'light-steel-stud'
    case 'masonry':
    case 'slab':
      return 'masonry'
  }
}

function frameSpacing(existing: ExistingConstruction): Millimetres | undefined {
  const cavity = existing.layers.findLast((layer) => layer.kind === 'cavity')
  return cavity?.kind === 'cavity' ? cavity.frame?.members?.spacingMm : undefined
}

/** Wool as deep as the near row of studs; a second row keeps the wool it has. */
function withWoolInBay(bay: CavityLayer): CavityLayer {
  const rowMm = bay.frame?.depthMm ?? bay.depthMm
  const held = woolDepth(bay)
  const wanted = bay.farFrame === undefined ? Math.max(held, rowMm) : held + rowMm
  return { ...bay, fill: 'mineral-wool', fillMm: Math.min(bay.depthMm, wanted) }
}

/** Depth of the wool in a cavity, mm; 0 without any. */
function woolDepth(cavity: CavityLayer): Millimetres {
  return cavity.fill === undefined ? 0 : (cavity.fillMm ?? cavity.depthMm)
}

/** An open bay and the assembly's cavity in front of it, as the one cavity they are. */
function mergeCavities(bay: CavityLayer, added: CavityLayer): CavityLayer {
  const woolMm = woolDepth(bay) + woolDepth(added)
  return {
    kind: 'cavity',
    depthMm: bay.depthMm + added.depthMm,
    ...(woolMm > 0 ? { fill: 'mineral-wool', fillMm: woolMm, fillAgainst: fillSide(bay, added) } : {}),
    ...(bay.link.kind === 'none' ? framesOnOwnRow(bay, added) : framesOnSharedRow(bay, added)),
  }
}

/** Wool stays with the row it was put in; in a roof space it lies low, on the ceiling's side. */
function fillSide(bay: CavityLayer, added: CavityLayer): 'far' | 'room' | 'both' {
  if (bay.fillAgainst === 'room' || woolDepth(bay) === 0) return 'room'
  return woolDepth(added) === 0 ? 'far' : 'both'
}

type Frames = Pick<CavityLayer, 'link' | 'frame' | 'farFrame'>

/** The old studs carry the far leaf only, so the assembly's link is what ties the two. */
function framesOnSharedRow(bay: CavityLayer, added: CavityLayer): Frames {
  return { link: added.link, frame: added.frame, farFrame: bay.frame }
}

/** The near row never touched the far leaf: whatever is fixed to it stays untied too. */
function framesOnOwnRow(bay: CavityLayer, added: CavityLayer): Frames {
  const frame = added.link.kind === 'none' ? added.frame : bracketsOnRow(bay.frame, added.frame)
  return { link: bay.link, frame, farFrame: bay.farFrame }
}

/** Boards on brackets are not stiffened by the row behind them, hence no members. */
function bracketsOnRow(row: CavityFrame | undefined, brackets: CavityFrame | undefined): CavityFrame | undefined {
  if (row === undefined || brackets === undefined) return brackets
  return {
    name: `${row.name} with ${brackets.name}`,
    depthMm: row.depthMm + brackets.depthMm,
    massKgM2: row.massKgM2 + brackets.massKgM2,
  }
}

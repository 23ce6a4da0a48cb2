import { isMasonryLeaf } from '#acoustics/layered/leafKind.ts'
import { isFloatingLink, isOnJoists, isUnpublishedLink } from '#acoustics/layered/spread.ts'
import { type Cavity, heldSideOf, type LayeredSystem, type Leaf } from '#acoustics/layered/system.ts'
import { materialAt, sheetMass } from '#acoustics/materials.ts'

/** Kinds of build-up that are compared with each other. */
export type AnchorGroup = 'walls' | 'floors' | 'masonry'

/** Where a build-up stands among the published ones; the same for a system and its reverse. */
export interface AnchorPoint {
  readonly group: AnchorGroup
  /** In the order of the group's features in data/scales.json. */
  readonly features: readonly number[]
  /** What carries the boards, and what hangs them from it: alike or not, with no measure between. */
  readonly kinds: readonly string[]
}

/** Spacing that stands in where a link has none, mm: the middle of the tables' 400 and 600. */
const NO_SPACING_MM = 500
/** Spacings are told in steps of the tables' own difference, mm. */
const SPACING_STEP_MM = 200

function massOf(leaf: Leaf): number {
  return leaf.sheets.reduce((sum, s) => sum + sheetMass(s.material, s.thicknessMm, s.surfaceMassKgM2), 0)
}

/** Share of a leaf's mass that is gypsum board, 0 to 1: published framed walls have nothing else. */
function gypsumShare(leaf: Leaf): number {
  const gypsum = leaf.sheets.filter(({ material }) => material === 'gypsum-type-x' || material === 'gypsum-regular')
  return massOf({ ...leaf, sheets: gypsum }) / massOf(leaf)
}

/** Boards and toppings, which the tables of framed constructions are about. */
function isOfBoards(leaf: Leaf): boolean {
  return leaf.sheets.every(({ material, thicknessMm }) => {
    const kind = materialAt(material, thicknessMm).class
    return kind === 'board' || kind === 'topping' || kind === 'heavy'
  })
}

/** Boards and sheathing only, no topping. */
function isLight(leaf: Leaf): boolean {
  return leaf.sheets.every(({ material, thicknessMm }) => materialAt(material, thicknessMm).class === 'board')
}

function fillShare(cavity: Cavity): number {
  return cavity.fillMm / cavity.depthMm
}

/** Stud and channel spacing in steps, and what the boards stand and hang on. */
function tieOf({ link }: Cavity): { studs: number; channels: number; kinds: readonly string[] } {
  const usual = NO_SPACING_MM / SPACING_STEP_MM
  switch (link.kind) {
    case 'resilient-channel': {
      const studs = (link.studSpacingMm ?? NO_SPACING_MM) / SPACING_STEP_MM
      const channels = link.channelSpacingMm / SPACING_STEP_MM
      return { studs: link.frame === 'separate-studs' ? usual : studs, channels, kinds: [link.frame, 'channel'] }
    }
    case 'wood-stud':
    case 'light-steel-stud':
    case 'load-bearing-steel-stud':
    case 'staggered-stud':
      return { studs: link.spacingMm / SPACING_STEP_MM, channels: usual, kinds: [link.kind, 'direct'] }
    default:
      return { studs: usual, channels: usual, kinds: ['separate-studs', 'direct'] }
  }
}

/** The two leaves of a cavity, the one that hangs or is lighter first. */
function orderedLeaves(far: Leaf, room: Leaf, cavity: Cavity): readonly [Leaf, Leaf] {
  if (cavity.link.kind === 'resilient-channel') return heldSideOf(cavity.link) === 'room' ? [room, far] : [far, room]
  return massOf(far) <= massOf(room) ? [far, room] : [room, far]
}

/** Shares closer than this are equal but for the order their sums were taken in. */
const SAME_SHARE = 1e-9

/** Of a floor, the ceiling first: the leaf with more gypsum in it, else the lighter. */
function ceilingFirst(far: Leaf, room: Leaf): readonly [Leaf, Leaf] {
  const more = gypsumShare(far) - gypsumShare(room)
  if (Math.abs(more) > SAME_SHARE) return more > 0 ? [far, room] : [room, far]
  return massOf(far) <= massOf(room) ? [far, room] : [room, far]
}

function framedPoint(far: Leaf, room: Leaf, cavity: Cavity): AnchorPoint | null {
  const isFloor = cavity.link.kind !== 'none' && isOnJoists(cavity)
  if (isFloor ? !isOfBoards(far) || !isOfBoards(room) : !isLight(far) || !isLight(room)) return null
  const [first, second] = isFloor ? ceilingFirst(far, room) : orderedLeaves(far, room, cavity)
  const { studs, channels, kinds } = tieOf(cavity)
  return {
    group: isFloor ? 'floors' : 'walls',
    features: [
      Math.log(massOf(first)),
      Math.log(massOf(second)),
      fillShare(cavity),
      studs,
      channels,
      Math.log(cavity.depthMm),
      isFloor ? gypsumShare(first) : Math.min(gypsumShare(first), gypsumShare(second)),
    ],
    kinds,
  }
}

/** A lining on masonry, as one of the ways the tables fix it. */
function liningKind({ link }: Cavity): 'channel' | 'tied' | 'free' {
  if (link.kind === 'none') return 'free'
  return link.kind === 'resilient-channel' ? 'channel' : 'tied'
}

function meanOver<Item>(items: readonly Item[], value: (item: Item) => number): number {
  return items.length === 0 ? 0 : items.reduce((sum, item) => sum + value(item), 0) / items.length
}

/** Masonry bare, or lined on one face or both. */
function masonryPoint(system: LayeredSystem): AnchorPoint | null {
  const core = system.leaves.findIndex(isMasonryLeaf)
  const body = system.leaves[core]
  if (body === undefined || system.leaves.length > 3) return null
  if (system.leaves.length === 3 && core !== 1) return null
  const linings = system.leaves.filter((_, i) => i !== core)
  if (!linings.every(isLight)) return null
  const { cavities } = system
  const count = (kind: string) => cavities.filter((cavity) => liningKind(cavity) === kind).length
  return {
    group: 'masonry',
    features: [
      Math.log(massOf(body)),
      meanOver(linings, (leaf) => Math.log(massOf(leaf) / 10)),
      meanOver(cavities, (cavity) => Math.log(cavity.depthMm / 25)),
      meanOver(cavities, fillShare),
      count('channel'),
      count('tied'),
      count('free'),
    ],
    kinds: [],
  }
}

/** Where a build-up stands among the published ones; null: none of them is of its kind. */
export function anchorPoint(system: LayeredSystem): AnchorPoint | null {
  const links = system.cavities.map(({ link }) => link)
  if (links.some((link) => isUnpublishedLink(link) || isFloatingLink(link))) return null
  if (system.leaves.some(isMasonryLeaf)) return masonryPoint(system)
  const [far, room] = system.leaves
  const [cavity] = system.cavities
  if (far === undefined || room === undefined || cavity === undefined || system.leaves.length > 2) return null
  return framedPoint(far, room, cavity)
}

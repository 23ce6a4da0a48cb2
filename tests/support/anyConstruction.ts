import fc from 'fast-check'
import type { Cavity, FrameKind, LayeredSystem, Leaf, Link, Side, StudRow } from '#acoustics/layered/system.ts'
import type { MaterialId } from '#acoustics/materials.ts'
import { leafOf } from './acoustics.ts'

const LIGHT: readonly MaterialId[] = ['gypsum-type-x', 'gypsum-regular', 'plywood', 'osb']
const FRAMES: readonly FrameKind[] = [
  'wood-stud',
  'light-steel-stud',
  'load-bearing-steel-stud',
  'masonry',
  'staggered-stud',
  'separate-studs',
]
const THICKNESSES = [9.5, 12.7, 15.875, 19] as const

/** One to three boards, some with compound in the first joint. */
export function boardLeaves(thicknesses: readonly number[] = THICKNESSES): fc.Arbitrary<Leaf> {
  return fc
    .tuple(fc.constantFrom(...LIGHT), fc.constantFrom(...thicknesses), fc.integer({ min: 1, max: 3 }), fc.boolean())
    .map(([material, thicknessMm, count, isDamped]) => ({
      ...leafOf(material, thicknessMm, count),
      dampedJoints: isDamped && count > 1 ? [0] : [],
    }))
}

export const heavyLeaves: fc.Arbitrary<Leaf> = fc.constantFrom(
  leafOf('concrete', 100),
  leafOf('concrete', 150),
  leafOf('concrete', 200),
  leafOf('concrete-block-hollow', 190),
  leafOf('brick', 102),
  leafOf('brick', 215),
)

export const panes: fc.Arbitrary<Leaf> = fc
  .tuple(fc.constantFrom<MaterialId>('glass', 'laminated-glass'), fc.constantFrom(3, 4, 6, 8, 10, 12))
  .map(([material, thicknessMm]) => leafOf(material, thicknessMm))

const sheets: fc.Arbitrary<Leaf> = fc.constantFrom(leafOf('steel-sheet', 1), leafOf('mass-loaded-vinyl', 3))

const spacing = fc.constantFrom(304.8, 406.4, 609.6)
const frame = fc.constantFrom(...FRAMES)
const heldSide = fc.constantFrom<Side>('far', 'room')

/** Every kind of link, channels and clips on either side and on every frame, floors that float. */
export const links: fc.Arbitrary<Link> = fc.oneof(
  fc.constant<Link>({ kind: 'none' }),
  fc.record({
    kind: fc.constantFrom('wood-stud', 'light-steel-stud', 'load-bearing-steel-stud', 'staggered-stud'),
    spacingMm: spacing,
  }),
  fc.record({
    kind: fc.constant('resilient-channel'),
    frame,
    studSpacingMm: spacing,
    channelSpacingMm: spacing,
    heldSide,
  }),
  fc.record({
    kind: fc.constantFrom('sound-clip', 'low-profile-clip'),
    frame,
    rowSpacingMm: fc.constant(609.6),
    clipSpacingMm: fc.constantFrom(609.6, 1219.2),
    heldSide,
  }),
  fc.record({
    kind: fc.constant('spring-hanger'),
    frame,
    rowSpacingMm: fc.constant(1219.2),
    hangerSpacingMm: fc.constant(1219.2),
    heldSide,
  }),
  fc.record({ kind: fc.constant('resilient-layer'), dynamicStiffnessMNm3: fc.constantFrom(5, 20, 80) }),
  fc.record({
    kind: fc.constant('floor-mounts'),
    dynamicStiffnessMNm3: fc.constantFrom(0.3, 1, 5),
    spacingMm: fc.constantFrom(400, 600),
  }),
)

const row: fc.Arbitrary<StudRow | null | undefined> = fc.oneof(
  fc.constantFrom(undefined, null),
  fc.record({
    material: fc.constantFrom('wood', 'light-steel', 'load-bearing-steel'),
    depthMm: fc.constantFrom(64, 89, 140),
    spacingMm: spacing,
  }),
)

/** Empty, part filled on either side or both, or full; studs of its own as usual or as told. */
export function cavities(link: fc.Arbitrary<Link> = links, shallowestMm = 10, deepestMm = 400): fc.Arbitrary<Cavity> {
  return fc
    .record({
      depthMm: fc.integer({ min: shallowestMm, max: deepestMm }),
      share: fc.constantFrom(0, 0.3, 0.5, 0.9, 1),
      fillAgainst: fc.constantFrom(undefined, 'far', 'room', 'both'),
      link,
      ribs: fc.oneof({ weight: 3, arbitrary: fc.constant(undefined) }, fc.record({ far: row, room: row })),
    })
    .map(({ share, ...cavity }) => ({ ...cavity, fillMm: share * cavity.depthMm }))
}

/** `fewest` to `most` leaves with a cavity between every two. */
export function constructions(
  leaf: fc.Arbitrary<Leaf>,
  cavity: fc.Arbitrary<Cavity>,
  fewest: number,
  most: number,
): fc.Arbitrary<LayeredSystem> {
  return fc
    .tuple(leaf, fc.array(fc.tuple(cavity, leaf), { minLength: fewest - 1, maxLength: most - 1 }))
    .map(([first, rest]) => ({
      leaves: [first, ...rest.map(([, next]) => next)],
      cavities: rest.map(([between]) => between),
    }))
}

const glazingGap: fc.Arbitrary<Cavity> = fc
  .constantFrom(6, 12, 16, 50, 100, 200)
  .map((depthMm) => ({ depthMm, fillMm: 0, link: { kind: 'none' } }))

/** Walls of boards on any frame, one to four leaves. */
export const framedWalls = constructions(boardLeaves(), cavities(), 1, 4)
export const glazings = constructions(panes, glazingGap, 1, 3)
/** Bare masonry, or lined on one face or both, one lining behind the other or not. */
export const masonryWalls: fc.Arbitrary<LayeredSystem> = fc
  .tuple(heavyLeaves, fc.array(fc.tuple(cavities(), boardLeaves()), { maxLength: 2 }), fc.boolean())
  .map(([heavy, linings, onBothFaces]): LayeredSystem => {
    const [first, second] = linings
    if (first && second && onBothFaces) {
      return { leaves: [first[1], heavy, second[1]], cavities: [first[0], second[0]] }
    }
    return { leaves: [heavy, ...linings.map(([, leaf]) => leaf)], cavities: linings.map(([cavity]) => cavity) }
  })
/** Anything the types allow, sensible or not. */
export const anyConstructions = constructions(fc.oneof(boardLeaves(), heavyLeaves, panes, sheets), cavities(), 1, 4)

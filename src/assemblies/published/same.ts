import {
  type Cavity,
  heldSideOf,
  type LayeredSystem,
  type Leaf,
  type LeafSheet,
  type Link,
} from '#acoustics/layered/system.ts'
import { sheetMass } from '#acoustics/materials.ts'
import type { Millimetres } from '#units/quantity.ts'

/** 15.9 is 5/8 in, 12.7 is 13: boards are printed to half a millimetre. */
const SAME_BOARD_MM: Millimetres = 0.5
/** 400 is 16 in, 600 is 24 in: spacings are printed in round numbers. */
const SAME_SPACING_MM: Millimetres = 12
/** Of a cavity, but never more than a tenth of it: shallow gaps are printed finer. */
const SAME_DEPTH_MM: Millimetres = 5
const SAME_DEPTH = 0.1
/** Share of the cavity an absorber may differ by: the tables ask that at least nine tenths be filled. */
const SAME_FILL = 0.11
/** Boards of one name differ by as much between makers. */
const SAME_MASS = 0.12

function isWithin(a: number | undefined, b: number | undefined, most: number): boolean {
  return a === undefined || b === undefined ? a === b : Math.abs(a - b) <= most
}

/** Tables of floors give one value for plywood and strand board alike. */
function isSameMaterial(a: LeafSheet['material'], b: LeafSheet['material']): boolean {
  const deck = (material: string) => (material === 'plywood' ? 'osb' : material)
  return deck(a) === deck(b)
}

function isSameSheet(a: LeafSheet, b: LeafSheet): boolean {
  const [massA, massB] = [a, b].map((s) => sheetMass(s.material, s.thicknessMm, s.surfaceMassKgM2))
  return (
    isSameMaterial(a.material, b.material) &&
    isWithin(a.thicknessMm, b.thicknessMm, SAME_BOARD_MM) &&
    isWithin(massA, massB, SAME_MASS * (massA ?? 0))
  )
}

function isSameLeaf(a: Leaf, b: Leaf): boolean {
  const isBare = a.dampedJoints.length === 0 && b.dampedJoints.length === 0
  return isBare && a.sheets.length === b.sheets.length && a.sheets.every((sheet, i) => isSameSheet(sheet, b.sheets[i]!))
}

/** Every spacing a link has, and what else tells it apart. */
function linkWords(link: Link): { readonly name: string; readonly spacings: readonly (number | undefined)[] } {
  switch (link.kind) {
    case 'resilient-channel': {
      const onStuds = link.frame.endsWith('-stud') && link.frame !== 'staggered-stud'
      const studs = onStuds ? link.studSpacingMm : undefined
      return { name: `channel on ${link.frame}, ${heldSideOf(link)}`, spacings: [studs, link.channelSpacingMm] }
    }
    case 'wood-stud':
    case 'light-steel-stud':
    case 'load-bearing-steel-stud':
    case 'staggered-stud':
      return { name: link.kind, spacings: [link.spacingMm] }
    default:
      return { name: link.kind, spacings: [] }
  }
}

function isSameLink(a: Link, b: Link): boolean {
  const [one, two] = [linkWords(a), linkWords(b)]
  return (
    one.name === two.name && one.spacings.every((spacing, i) => isWithin(spacing, two.spacings[i], SAME_SPACING_MM))
  )
}

function isSameCavity(a: Cavity, b: Cavity): boolean {
  return (
    isWithin(a.depthMm, b.depthMm, Math.min(SAME_DEPTH_MM, SAME_DEPTH * a.depthMm)) &&
    isWithin(a.fillMm / a.depthMm, b.fillMm / b.depthMm, SAME_FILL) &&
    isSameLink(a.link, b.link)
  )
}

/** The same build-up as far as a published table tells one from another; clips and hangers never are. */
export function isSameBuildUp(a: LayeredSystem, b: LayeredSystem): boolean {
  return (
    a.leaves.length === b.leaves.length &&
    a.leaves.every((leaf, i) => isSameLeaf(leaf, b.leaves[i]!)) &&
    a.cavities.every((cavity, i) => isSameCavity(cavity, b.cavities[i]!))
  )
}

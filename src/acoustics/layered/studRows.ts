import links from '#acoustics/data/links.json' with { type: 'json' }
import { isMasonryLeaf, needsFrame } from '#acoustics/layered/leafKind.ts'
import { studSpacingOf } from '#acoustics/layered/link.ts'
import {
  type Cavity,
  type FrameKind,
  heldSideOf,
  type LayeredSystem,
  type Leaf,
  type Side,
  type StudRow,
} from '#acoustics/layered/system.ts'

function usualRow(): StudRow {
  return { material: 'wood', depthMm: links.usualRow.depthMm, spacingMm: links.usualRow.spacingMm }
}

function rowMaterial(frame: FrameKind): StudRow['material'] {
  if (frame === 'light-steel-stud') return 'light-steel'
  return frame === 'load-bearing-steel-stud' ? 'load-bearing-steel' : 'wood'
}

/** Depth hardware takes beside its frame, mm. */
function hardwareDepth(cavity: Cavity): number {
  switch (cavity.link.kind) {
    case 'resilient-channel':
      return links.resilientChannel.depthMm
    case 'low-profile-clip':
      return links.clip.lowProfileDepthMm
    case 'spring-hanger':
      return links.springHanger.depthMm
    default:
      return links.clip.depthMm
  }
}

/** The studs behind a channel, clip or hanger: they fill the cavity but for the hardware. */
function framedRow(cavity: Cavity): StudRow | null {
  const { link } = cavity
  if (!('frame' in link) || link.frame === 'masonry') return null
  if (link.frame === 'staggered-stud' || link.frame === 'separate-studs') return usualRow()
  const depthMm = cavity.depthMm - hardwareDepth(cavity)
  if (depthMm < links.rowMinDepthMm.value) return null
  const spacingMm = link.kind === 'resilient-channel' ? studSpacingOf(link) : links.usualRow.spacingMm
  return { material: rowMaterial(link.frame), depthMm, spacingMm }
}

/** The row a leaf carries in a cavity by the link alone. */
function rowByLink(cavity: Cavity, side: Side, leaf: Leaf): StudRow | null {
  const { link } = cavity
  switch (link.kind) {
    case 'none':
      return needsFrame(leaf) ? usualRow() : null
    case 'staggered-stud':
      return { ...usualRow(), spacingMm: link.spacingMm }
    case 'resilient-channel':
    case 'sound-clip':
    case 'low-profile-clip':
    case 'spring-hanger':
      return heldSideOf(link) === side ? null : framedRow(cavity)
    default:
      return null
  }
}

/** The row a leaf carries in one cavity: as told, else as usual for the link; masonry carries none. */
function rowInCavity(cavity: Cavity, side: Side, leaf: Leaf): StudRow | null {
  const told = cavity.ribs?.[side]
  if (told !== undefined) return told
  return isMasonryLeaf(leaf) ? null : rowByLink(cavity, side, leaf)
}

const TIES: readonly string[] = ['wood-stud', 'light-steel-stud', 'load-bearing-steel-stud']

function isTied(cavity: Cavity | undefined): boolean {
  return cavity !== undefined && TIES.includes(cavity.link.kind)
}

/** Heaviest first: which of two rows counts must not depend on the room it is seen from. */
const BY_WEIGHT: readonly StudRow['material'][] = ['load-bearing-steel', 'wood', 'light-steel']

/** A leaf stands on one row even where both its cavities would give it one: the closer, the deeper, the heavier. */
function strongerRow(a: StudRow | null, b: StudRow | null): StudRow | null {
  if (a === null || b === null) return a ?? b
  if (a.spacingMm !== b.spacingMm) return a.spacingMm < b.spacingMm ? a : b
  if (a.depthMm !== b.depthMm) return a.depthMm > b.depthMm ? a : b
  return BY_WEIGHT.indexOf(a.material) <= BY_WEIGHT.indexOf(b.material) ? a : b
}

/**
 * Studs of each leaf that touch no other leaf; they weigh on it and stiffen it. A leaf that is tied to another one by
 * its studs has none: they are the connection.
 * @source own rule; without it framed walls: RMS 3.15 instead of 2.75 STC over 121 published rows
 */
export function studRowsOf(system: LayeredSystem): readonly (StudRow | null)[] {
  return system.leaves.map((leaf, i) => {
    const [before, after] = [system.cavities[i - 1], system.cavities[i]]
    if (isTied(before) || isTied(after)) return null
    const rows = [before && rowInCavity(before, 'room', leaf), after && rowInCavity(after, 'far', leaf)]
    return strongerRow(rows[0] ?? null, rows[1] ?? null)
  })
}

/** True when a leaf beside this cavity stands on studs of its own there. */
export function hasRowsBeside(system: LayeredSystem, cavity: number): boolean {
  const at = system.cavities[cavity]
  const [far, room] = [system.leaves[cavity], system.leaves[cavity + 1]]
  if (at === undefined || far === undefined || room === undefined) return false
  return rowInCavity(at, 'far', far) !== null || rowInCavity(at, 'room', room) !== null
}

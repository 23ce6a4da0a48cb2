import { modelLeaf } from '#acoustics/layered/leaf.ts'
import { isMasonryLeaf, isPaneLeaf } from '#acoustics/layered/leafKind.ts'
import { isDirectFixed, isFloatingLink, isOnJoists, isUnpublishedLink } from '#acoustics/layered/spread.ts'
import type { LayeredSystem } from '#acoustics/layered/system.ts'

/** True but doubtful: shown with the prediction, exported, tested. */
export interface PredictionNote {
  readonly code:
    | 'shallow-gap'
    | 'held-to-existing'
    | 'held-to-standard'
    | 'triple-leaf'
    | 'outside-range'
    | 'no-published-measurement'
    | 'uncertain-in-print'
    | 'damping-estimated'
  /** A full sentence. */
  readonly text: string
}

/** A new gap this shallow between two light leaves makes a wall worse, mm. @source own rule from published rows */
export const SHALLOW_GAP_MM = 25
/** Range the method was tried in: leaf kg/m2, cavity mm. @source own comparison with published rows */
const LEAF_RANGE_KG_M2 = [3, 500] as const
const CAVITY_RANGE_MM = [10, 400] as const

/** Gaps of at most 25 mm between two light leaves that are not both glass, by index. */
export function shallowGaps(system: LayeredSystem): readonly number[] {
  return system.cavities.flatMap((cavity, i) => {
    const [far, room] = [system.leaves[i]!, system.leaves[i + 1]!]
    const isLight = !isMasonryLeaf(far) && !isMasonryLeaf(room)
    const isGlazing = isPaneLeaf(far) && isPaneLeaf(room)
    if (isFloatingLink(cavity.link)) return []
    return isLight && !isGlazing && cavity.depthMm <= SHALLOW_GAP_MM ? [i] : []
  })
}

function gapNotes(system: LayeredSystem): readonly PredictionNote[] {
  return shallowGaps(system).map((i) => ({
    code: 'shallow-gap',
    text: `A gap of ${Math.round(system.cavities[i]!.depthMm)} mm between two light leaves acts as a stiff spring and can be worse than no new leaf at all; such walls have been measured 15 to 20 points below their design.`,
  }))
}

function tripleNotes(system: LayeredSystem): readonly PredictionNote[] {
  const count = system.leaves.length
  if (count < 3) return []
  const hasMasonryCore = system.leaves.slice(1, -1).some(isMasonryLeaf)
  const text = hasMasonryCore
    ? 'Linings on both faces of masonry: over shallow gaps they can rate below the bare wall; published rows of this kind scatter by 5 points around the calculation.'
    : `This has ${count} leaves: an inner leaf costs isolation below about 200 Hz compared with the same boards as two leaves; the size of that loss is a calculation with little print behind it.`
  return [{ code: 'triple-leaf', text }]
}

function isOutside(value: number, [low, high]: readonly [number, number]): boolean {
  return value < low || value > high
}

function rangeNotes(system: LayeredSystem): readonly PredictionNote[] {
  const leaves = system.leaves.flatMap((leaf, i): PredictionNote[] => {
    const mass = modelLeaf(leaf, null).mass
    if (!isOutside(mass, LEAF_RANGE_KG_M2)) return []
    const text = `Leaf ${i + 1} weighs ${mass.toFixed(1)} kg/m2; the method was tried from 3 to 500 kg/m2.`
    return [{ code: 'outside-range', text }]
  })
  const cavities = system.cavities.flatMap((cavity, i): PredictionNote[] => {
    if (isFloatingLink(cavity.link) || !isOutside(cavity.depthMm, CAVITY_RANGE_MM)) return []
    const text = `Cavity ${i + 1} is ${Math.round(cavity.depthMm)} mm deep; the method was tried from 10 to 400 mm.`
    return [{ code: 'outside-range', text }]
  })
  return [...leaves, ...cavities]
}

function linkNotes(system: LayeredSystem): readonly PredictionNote[] {
  const links = system.cavities.map((cavity) => cavity.link)
  const notes: PredictionNote[] = []
  if (links.some(isUnpublishedLink)) {
    const text =
      'There is no published measurement near this build-up: clips and hangers are calculated from a remembered stiffness, so the likely range is wide.'
    notes.push({ code: 'no-published-measurement', text })
  }
  if (links.some(isFloatingLink)) {
    const text =
      'There is no published measurement near this build-up: the floating floor is calculated from the stiffness given for its resilient layer, which is seldom measured in place, so the likely range is wide. Footsteps and kick drum are not in this airborne figure.'
    notes.push({ code: 'no-published-measurement', text })
  }
  const direct = system.cavities.filter((cavity) => isDirectFixed(cavity.link))
  if (direct.length > 0) notes.push({ code: 'uncertain-in-print', text: directText(direct.some(isOnJoists)) })
  return notes
}

function directText(onJoists: boolean): string {
  return onJoists
    ? 'A board screwed straight under joists: the calculation alone is 6 to 10 points above one published table of light floors. Where published floors are near, the figure shown is moved towards them; tables differ by 10 for the same floor.'
    : 'Boards screwed straight to wood or heavy steel framing are the least certain class in print: with two layers of board, tables differ by up to 8 points for the same wall.'
}

function dampingNotes(system: LayeredSystem): readonly PredictionNote[] {
  if (system.leaves.every((leaf) => leaf.dampedJoints.length === 0)) return []
  const text = 'The damping compound is an estimate from remembered properties; no published rating was matched.'
  return [{ code: 'damping-estimated', text }]
}

/** Everything doubtful about a prediction of this construction, in the order it should be read. */
export function notesOn(system: LayeredSystem): readonly PredictionNote[] {
  return [
    ...gapNotes(system),
    ...tripleNotes(system),
    ...linkNotes(system),
    ...dampingNotes(system),
    ...rangeNotes(system),
  ]
}

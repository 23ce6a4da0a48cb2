import { modelLeaf } from '#acoustics/layered/leaf.ts'
import { isMasonryLeaf } from '#acoustics/layered/leafKind.ts'
import { isSpringLink, linkStiffness } from '#acoustics/layered/linkStiffness.ts'
import { shallowGaps } from '#acoustics/layered/notes.ts'
import { criticalFrequency, type LeafMode, massAirMass } from '#acoustics/layered/resonance.ts'
import { isFloatingLink } from '#acoustics/layered/spread.ts'
import type { LayeredSystem, LeafSheet, Link } from '#acoustics/layered/system.ts'
import { type MaterialClass, materialAt } from '#acoustics/materials.ts'
import type { Hertz } from '#units/quantity.ts'

/** A frequency where a construction lets more through, and why. */
export interface Resonance {
  readonly hz: Hertz
  readonly kind: 'mass-air-mass' | 'mass-spring' | 'coincidence'
  /** In plain words. */
  readonly cause: string
  /** What would move it. */
  readonly remedy: string
}

function springName(link: Link): string {
  switch (link.kind) {
    case 'resilient-channel':
      return 'channels'
    case 'spring-hanger':
      return 'hangers'
    case 'light-steel-stud':
      return 'light steel studs'
    default:
      return 'clips'
  }
}

/** The leaves of a triple-leaf wall that need not be there: inner ones, neither masonry nor under a floating floor. */
function hasSparableInnerLeaf({ leaves, cavities }: LayeredSystem): boolean {
  return leaves.some(
    (leaf, i) =>
      i > 0 &&
      i < leaves.length - 1 &&
      !isMasonryLeaf(leaf) &&
      ![cavities[i - 1]!, cavities[i]!].some(({ link }) => isFloatingLink(link)),
  )
}

/** The same outer leaves with one gap as deep as all of them: its resonance is what the inner leaves cost. */
function withoutInnerLeaves({ leaves, cavities }: LayeredSystem): Hertz {
  const inner = leaves.slice(1, -1).flatMap((leaf) => leaf.sheets)
  const depthMm =
    cavities.reduce((sum, cavity) => sum + cavity.depthMm, 0) + inner.reduce((sum, sheet) => sum + sheet.thicknessMm, 0)
  const outer = [leaves[0]!, leaves[leaves.length - 1]!]
  return massAirMass({ leaves: outer, cavities: [{ depthMm, fillMm: 0, link: { kind: 'none' } }] })[0]!.hz
}

/** What an inner leaf does, said with each resonance it makes. */
function tripleWords(system: LayeredSystem): string {
  if (system.leaves.length < 3 || !hasSparableInnerLeaf(system)) return ''
  const single = Math.round(withoutInnerLeaves(system))
  return system.leaves.length === 3
    ? `; triple leaf: the middle leaf splits one deep gap into two shallow ones, and without it there would be one resonance at ${single} Hz`
    : `; ${system.leaves.length} leaves: the inner leaves split one deep gap into shallow ones, and without them there would be one resonance at ${single} Hz`
}

/** What the spring between two leaves is made of, and where clips or hangers would have it without the air. */
function springWords(system: LayeredSystem, cavity: number, springs: readonly number[]): string {
  const { link } = system.cavities[cavity]!
  if (!isSpringLink(link)) return 'its air is'
  const together = `its air and its ${springName(link)} together`
  if (link.kind === 'resilient-channel' || link.kind === 'light-steel-stud') return `${together} are`
  const [far, room] = [system.leaves[cavity]!, system.leaves[cavity + 1]!].map((leaf) => modelLeaf(leaf, null).mass)
  const alone = Math.sqrt(springs[cavity]! * (1 / far! + 1 / room!)) / (2 * Math.PI)
  return `${together} (the ${springName(link)} alone: ${Math.round(alone)} Hz) are`
}

function floatingResonance(system: LayeredSystem, { hz, cavity }: LeafMode): Resonance {
  const { link, depthMm } = system.cavities[cavity]!
  const onMounts = link.kind === 'floor-mounts'
  const on = onMounts ? 'its mounts and the air between them' : 'its resilient layer'
  return {
    hz,
    kind: 'mass-spring',
    cause: `the floating floor bounces on ${on}, gap ${cavity + 1} of ${Math.round(depthMm)} mm`,
    remedy: onMounts
      ? 'A higher gap, softer mounts or a heavier floor lower it.'
      : 'A softer layer or a heavier floor lowers it.',
  }
}

function gapRemedy(system: LayeredSystem, cavity: number, isShallow: boolean, triple: string): string {
  const { link } = system.cavities[cavity]!
  if (triple !== '') {
    return 'Take the inner leaf away or move its boards to an outer one; else deeper gaps or heavier leaves lower it.'
  }
  if (isShallow) return 'A deeper gap lowers it most.'
  if (!isSpringLink(link)) return 'A deeper gap or heavier leaves lower it.'
  return `A deeper gap, heavier leaves, or fewer or softer ${springName(link)} lower it.`
}

function gapResonance(system: LayeredSystem, mode: LeafMode, springs: readonly number[], triple: string): Resonance {
  const { hz, cavity } = mode
  const { link, depthMm } = system.cavities[cavity]!
  if (isFloatingLink(link)) return floatingResonance(system, mode)
  const isShallow = shallowGaps(system).includes(cavity)
  const name = `${isShallow ? 'shallow ' : ''}gap ${cavity + 1} of ${Math.round(depthMm)} mm`
  return {
    hz,
    kind: 'mass-air-mass',
    cause: `${name} resonates: ${springWords(system, cavity, springs)} the spring between leaves ${cavity + 1} and ${cavity + 2}${triple}`,
    remedy: gapRemedy(system, cavity, isShallow, triple),
  }
}

/** Upper edge of the 5000 Hz band: dips above it are not on the curve. */
const HIGHEST_SHOWN_HZ = 5623
/** Boards of one name that differ by less are told once: weights differ by what rides on them. */
const SAME_BOARD = 1.15

interface Coinciding {
  readonly name: string
  readonly hz: Hertz
  readonly kind: MaterialClass
  readonly leaves: readonly number[]
}

function coincidingSheet(sheet: LeafSheet, leaf: number): Coinciding {
  const material = materialAt(sheet.material, sheet.thicknessMm)
  const name = `${material.name}, ${Math.round(sheet.thicknessMm * 10) / 10} mm`
  return { name, hz: criticalFrequency(sheet), kind: material.class, leaves: [leaf] }
}

function coincidingSheets(system: LayeredSystem): readonly Coinciding[] {
  const found: Coinciding[] = []
  const all = system.leaves.flatMap((leaf, i) => leaf.sheets.map((sheet) => coincidingSheet(sheet, i + 1)))
  for (const next of all.toSorted((a, b) => a.hz - b.hz)) {
    if (next.hz > HIGHEST_SHOWN_HZ) continue
    const known = found.findIndex(({ name, hz }) => name === next.name && next.hz < hz * SAME_BOARD)
    const same = found[known]
    if (same === undefined) found.push(next)
    else found[known] = { ...same, leaves: [...new Set([...same.leaves, ...next.leaves])].toSorted((a, b) => a - b) }
  }
  return found
}

function leafWords(leaves: readonly number[]): string {
  if (leaves.length === 1) return `leaf ${leaves[0]}`
  return `leaves ${leaves.slice(0, -1).join(', ')} and ${leaves.at(-1)}`
}

function coincidenceRemedy(kind: MaterialClass): string {
  switch (kind) {
    case 'pane':
      return 'Panes of different thickness spread it; laminated glass damps it.'
    case 'heavy':
      return 'More thickness lowers it; a lining over a deep gap covers it.'
    default:
      return 'A different thickness on the other leaf, or a damping compound between two boards.'
  }
}

/** Every dip a designer should know of, by rising frequency. */
export function resonancesOf(system: LayeredSystem): readonly Resonance[] {
  const springs = linkStiffness(system)
  const triple = tripleWords(system)
  const gaps = massAirMass(system, springs).map((mode) => gapResonance(system, mode, springs, triple))
  const coincidences = coincidingSheets(system).map(
    ({ name, hz, kind, leaves }): Resonance => ({
      hz,
      kind: 'coincidence',
      cause: `coincidence of ${name}, in ${leafWords(leaves)}`,
      remedy: coincidenceRemedy(kind),
    }),
  )
  return [...gaps, ...coincidences].toSorted((a, b) => a.hz - b.hz)
}

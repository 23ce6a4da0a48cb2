import { AIR_IMPEDANCE, SOUND_SPEED } from '#acoustics/layered/air.ts'
import { dampedBending } from '#acoustics/layered/damping.ts'
import { type GaussRule, gaussRule } from '#acoustics/layered/gauss.ts'
import type { LeafModel } from '#acoustics/layered/leaf.ts'
import { lossAt, type SheetModel } from '#acoustics/layered/sheet.ts'
import type { NodeSet } from '#acoustics/layered/workspace.ts'

/** Beyond this share of grazing incidence a coincidence angle is no longer told apart from grazing. */
const STEEPEST_SINE = 0.995
/** Two angles closer than this share of the sharper one's width are treated as one. */
const SAME_ANGLE = 0.25

/** An angle of incidence at which a leaf follows the sound without resistance, and how sharply. */
interface Coincidence {
  readonly angle: number
  readonly width: number
}

/** Squared trace wavenumber (1/m2) of free bending waves of a Mindlin plate at omega. */
function freeWavenumber2(sheet: SheetModel, stiffness: number, omega: number): number {
  const d = sheet.bending * stiffness
  const s = sheet.shear * stiffness
  const w2 = omega * omega
  const a = s * d
  const b = s * sheet.inertia * w2 + w2 * sheet.mass * d
  const c = w2 * sheet.mass * (s - sheet.inertia * w2)
  return (b + Math.sqrt(b * b + 4 * a * c)) / (2 * a)
}

/** Squared wavenumbers at which a leaf may coincide: each sheet's own, and those of the leaf moving as a whole. */
function leafWavenumbers2(leaf: LeafModel, hz: number, stiffness: number): readonly number[] {
  const omega = 2 * Math.PI * hz
  const own = leaf.sheets.map((sheet) => freeWavenumber2(sheet, stiffness, omega))
  if (leaf.sheets.length === 1 && leaf.damped.length === 0) return own
  const tied = leaf.damped.length > 0 ? dampedBending(leaf.damped, hz, stiffness).re : 0
  return [...own, omega * Math.sqrt(leaf.mass / (leaf.bending * stiffness + tied))]
}

const NONE: readonly Coincidence[] = []

function leafCoincidences(leaf: LeafModel, hz: number, stiffness: number): readonly Coincidence[] {
  // Shear only raises a sheet's critical frequency, so below the thin-plate value nothing coincides.
  if (hz * Math.sqrt(stiffness) < leaf.lowestCriticalHz) return NONE
  const omega = 2 * Math.PI * hz
  const k = omega / SOUND_SPEED
  const loss = Math.min(...leaf.sheets.map((sheet) => lossAt(sheet, hz)))
  return leafWavenumbers2(leaf, hz, stiffness).flatMap((x) => {
    const sine = Math.sqrt(x) / k
    if (!(sine < STEEPEST_SINE)) return []
    const angle = Math.asin(sine)
    const resistance = loss + (2 * AIR_IMPEDANCE) / (omega * leaf.mass * Math.cos(angle))
    return [{ angle, width: 0.25 * resistance * Math.tan(angle) }]
  })
}

/** Angles in rising order, near-equal ones merged into the sharper. */
function distinctCoincidences(all: readonly Coincidence[]): readonly Coincidence[] {
  const kept: Coincidence[] = []
  for (const next of all.toSorted((a, b) => a.angle - b.angle)) {
    const last = kept.at(-1)
    const isSame = last !== undefined && next.angle - last.angle < SAME_ANGLE * Math.min(last.width, next.width)
    if (!isSame) kept.push(next)
    else if (next.width < last.width) kept[kept.length - 1] = next
  }
  return kept
}

function coincidencesOf(leaves: readonly LeafModel[], hz: number, stiffness: number): readonly Coincidence[] {
  const rooted = hz * Math.sqrt(stiffness)
  if (leaves.every((leaf) => rooted < leaf.lowestCriticalHz)) return NONE
  return distinctCoincidences(leaves.flatMap((leaf) => leafCoincidences(leaf, hz, stiffness)))
}

function pushNode(nodes: NodeSet, angle: number, weight: number): void {
  const sine = Math.sin(angle)
  nodes.sin[nodes.count] = sine
  nodes.sin2[nodes.count] = sine * sine
  nodes.cos[nodes.count] = Math.cos(angle)
  nodes.weight[nodes.count] = weight
  nodes.count += 1
}

/** Nodes crowded towards a coincidence: theta = angle + side x width sinh u, Gauss nodes in u. */
function pushGradedSide(nodes: NodeSet, at: Coincidence, side: 1 | -1, length: number, rule: GaussRule): void {
  const top = Math.asinh(length / at.width)
  rule.nodes.forEach((x, i) => {
    const grown = Math.exp((top / 2) * (x + 1))
    const angle = at.angle + (side * at.width * (grown - 1 / grown)) / 2
    pushNode(nodes, angle, rule.weights[i]! * (top / 2) * at.width * 0.5 * (grown + 1 / grown))
  })
}

const RULES = new Map<number, GaussRule>()

function ruleOf(count: number): GaussRule {
  const known = RULES.get(count) ?? gaussRule(count)
  RULES.set(count, known)
  return known
}

function fillPlainNodes(nodes: NodeSet, rule: GaussRule): void {
  nodes.plain = true
  rule.nodes.forEach((x, i) => {
    pushNode(nodes, (Math.PI / 4) * (x + 1), rule.weights[i]! * (Math.PI / 4))
  })
}

/**
 * Angles of incidence between 0 and pi/2 with weights, crowded around every coincidence angle. Evenly spread Gauss angles
 * miss by up to 2 dB on boards and 11 dB on concrete; these stay within 0.35 dB at 8 nodes a side.
 * @source own construction
 */
export function fillNodes(
  nodes: NodeSet,
  leaves: readonly LeafModel[],
  hz: number,
  stiffness: number,
  perSide: number,
): void {
  const found = coincidencesOf(leaves, hz, stiffness)
  if (found.length === 0 && nodes.plain && nodes.count === 2 * perSide) return
  nodes.count = 0
  if (found.length === 0) {
    fillPlainNodes(nodes, ruleOf(2 * perSide))
    return
  }
  nodes.plain = false
  const rule = ruleOf(perSide)
  found.forEach((at, i) => {
    const from = i === 0 ? 0 : (found[i - 1]!.angle + at.angle) / 2
    const to = i === found.length - 1 ? Math.PI / 2 : (at.angle + found[i + 1]!.angle) / 2
    pushGradedSide(nodes, at, -1, at.angle - from, rule)
    pushGradedSide(nodes, at, 1, to - at.angle, rule)
  })
}

import { addDampedBending, type DampedJoint, dampedBending, modelDampedJoints } from '#acoustics/layered/damping.ts'
import { isMasonryLeaf } from '#acoustics/layered/leafKind.ts'
import type { RibModel } from '#acoustics/layered/rib.ts'
import { countAlike, lossAt, modelSheet, type SheetModel, thinPlateCriticalHz } from '#acoustics/layered/sheet.ts'
import type { Leaf } from '#acoustics/layered/system.ts'
import type { Tone } from '#acoustics/layered/tone.ts'
import { MAX_NODES, type Workspace } from '#acoustics/layered/workspace.ts'

/** A leaf ready for the solver. */
export interface LeafModel {
  readonly sheets: readonly SheetModel[]
  readonly damped: readonly DampedJoint[]
  /** kg/m2 */
  readonly mass: number
  /** Sum over freely slipping sheets, N m. */
  readonly bending: number
  /** Nothing in the leaf coincides below this frequency at nominal stiffness, Hz; 0 where a compound may lower it. */
  readonly lowestCriticalHz: number
  /** Concrete, block or brick that stands by itself. */
  readonly isMasonry: boolean
  /** Studs the leaf carries that do not touch the next leaf. */
  readonly rib: RibModel | null
}

/**
 * A leaf ready for the solver. Screwed sheets slip freely on each other, so masses and bending stiffnesses add.
 * @source sum of layer impedances at the same velocity, own derivation
 */
export function modelLeaf(leaf: Leaf, rib: RibModel | null): LeafModel {
  const sheets = leaf.sheets.map(modelSheet)
  return {
    sheets: countAlike(sheets),
    damped: modelDampedJoints(sheets, leaf.dampedJoints),
    mass: sheets.reduce((sum, sheet) => sum + sheet.mass, 0),
    bending: sheets.reduce((sum, sheet) => sum + sheet.bending, 0),
    lowestCriticalHz: leaf.dampedJoints.length > 0 ? 0 : Math.min(...sheets.map(thinPlateCriticalHz)),
    isMasonry: isMasonryLeaf(leaf),
    rib,
  }
}

/** Bending stiffness that fasteners feel at a frequency, N m, real part. */
export function bendingAt(leaf: LeafModel, tone: Tone): number {
  const free = leaf.bending * tone.stiffness
  return leaf.damped.length === 0 ? free : free + dampedBending(leaf.damped, tone).re
}

/** Adds one kind of sheet: Zl = j w m + (S kt^2 / j w) A / (A + S), A = D kt^2 - I w^2, D and S complex. */
function addSheet(ws: Workspace, base: number, sheet: SheetModel, tone: Tone): void {
  const { sin2, count } = ws.nodes
  const { leafRe, leafIm } = ws
  const { omega, stiffness, k2 } = tone
  const loss = lossAt(sheet, tone.hz)
  const dRe = sheet.bending * stiffness
  const dIm = dRe * loss
  const sRe = sheet.shear * stiffness
  const sIm = sRe * loss
  const rotary = sheet.inertia * omega * omega
  const inertial = sheet.count * omega * sheet.mass
  for (let n = 0; n < count; n++) {
    const kt2 = k2 * sin2[n]!
    const aRe = dRe * kt2 - rotary
    const aIm = dIm * kt2
    const bRe = aRe + sRe
    const bIm = aIm + sIm
    const scale = (sheet.count * kt2) / (omega * (bRe * bRe + bIm * bIm))
    const cRe = sRe * aRe - sIm * aIm
    const cIm = sRe * aIm + sIm * aRe
    // (x + j y) / j = y - j x
    leafRe[base + n]! += scale * (cIm * bRe - cRe * bIm)
    leafIm[base + n]! += inertial - scale * (cRe * bRe + cIm * bIm)
  }
}

/**
 * Impedance of leaf `index` without its ribs at every node, Pa s/m, into ws.leafRe/leafIm.
 * @source Mindlin plate under a travelling pressure, own algebra, theory memory
 */
export function fillLeafImpedance(ws: Workspace, index: number, leaf: LeafModel, tone: Tone): void {
  const base = index * MAX_NODES
  ws.leafRe.fill(0, base, base + ws.nodes.count)
  ws.leafIm.fill(0, base, base + ws.nodes.count)
  for (const sheet of leaf.sheets) addSheet(ws, base, sheet, tone)
  if (leaf.damped.length > 0) addDampedBending(ws, base, leaf.damped, tone)
}

import table from '#acoustics/data/cavity.json' with { type: 'json' }
import { fillLayer, LAYER } from '#acoustics/layered/cavityLayer.ts'
import { type Medium, setAir, setFill } from '#acoustics/layered/medium.ts'
import type { Tone } from '#acoustics/layered/tone.ts'
import { MAX_NODES, type Workspace } from '#acoustics/layered/workspace.ts'

/** One layer across a cavity, of air or of wool. */
export interface CavityLayer {
  /** m, > 0 */
  readonly depth: number
  readonly isFill: boolean
}

/** A cavity ready for the solver: its layers from the far side to the room and the loss of its air. */
export interface CavityModel {
  readonly layers: readonly CavityLayer[]
  readonly loss: number
  /** A resilient layer instead of air; null: air. */
  readonly spring: SmearedSpring | null
}

/** A layer that is nothing but a spring: its own mass and the waves in its thickness are left out. */
export interface SmearedSpring {
  /** N/m3 */
  readonly stiffness: number
  readonly loss: number
}

/**
 * Loss factor of the air in a cavity of a depth in m: shallow ones lose more at their edges and frames.
 * @source fitted, data/cavity.json
 */
export function cavityLoss(depth: number): number {
  const { atReferenceDepth, referenceDepthM, depthExponent, max } = table.loss
  return Math.min(max, atReferenceDepth * (referenceDepthM / depth) ** depthExponent)
}

/**
 * Loss factor of the gap between two panes, depth in m: little in a factory-sealed unit, as any cavity when deep.
 * @source data/cavity.json
 */
export function glazingLoss(depth: number): number {
  const { loss, upToMm, noneFromMm } = table.sealedUnit
  const open = Math.min(1, Math.max(0, (1000 * depth - upToMm) / (noneFromMm - upToMm)))
  return loss + open * (cavityLoss(depth) - loss)
}

/** The medium in hand. */
const MEDIUM: Medium = { k2Re: 0, k2Im: 0, zkRe: 0, zkIm: 0 }

function storeFirst(ws: Workspace, base: number): void {
  const { z11Re, z11Im, z12Re, z12Im, z22Re, z22Im } = ws
  const { ownRe, ownIm, transferRe, transferIm } = LAYER
  const { count } = ws.nodes
  for (let n = 0; n < count; n++) {
    const i = base + n
    z11Re[i] = ownRe[n]!
    z11Im[i] = ownIm[n]!
    z22Re[i] = ownRe[n]!
    z22Im[i] = ownIm[n]!
    z12Re[i] = transferRe[n]!
    z12Im[i] = transferIm[n]!
  }
}

/** Joins the next layer b to what stands in the workspace: z11 - z12^2 / s, z12 b12 / s, b22 - b12^2 / s, s = z22 + b11. */
function joinNext(ws: Workspace, base: number): void {
  const { z11Re, z11Im, z12Re, z12Im, z22Re, z22Im } = ws
  const { ownRe, ownIm, transferRe, transferIm } = LAYER
  const { count } = ws.nodes
  for (let n = 0; n < count; n++) {
    const i = base + n
    const sRe = z22Re[i]! + ownRe[n]!
    const sIm = z22Im[i]! + ownIm[n]!
    const per = 1 / (sRe * sRe + sIm * sIm)
    const aRe = z12Re[i]!
    const aIm = z12Im[i]!
    const bRe = transferRe[n]!
    const bIm = transferIm[n]!
    const uRe = (aRe * sRe + aIm * sIm) * per
    const uIm = (aIm * sRe - aRe * sIm) * per
    const wRe = (bRe * sRe + bIm * sIm) * per
    const wIm = (bIm * sRe - bRe * sIm) * per
    z11Re[i]! -= uRe * aRe - uIm * aIm
    z11Im[i]! -= uRe * aIm + uIm * aRe
    z12Re[i] = uRe * bRe - uIm * bIm
    z12Im[i] = uRe * bIm + uIm * bRe
    z22Re[i] = ownRe[n]! - (wRe * bRe - wIm * bIm)
    z22Im[i] = ownIm[n]! - (wRe * bIm + wIm * bRe)
  }
}

/** A spring passes on the whole force it takes: s' (1 + j eta) / (j w) in every place. */
function fillSpring(ws: Workspace, base: number, spring: SmearedSpring, { omega }: Tone): void {
  const { z11Re, z11Im, z12Re, z12Im, z22Re, z22Im } = ws
  const to = base + ws.nodes.count
  const im = -spring.stiffness / omega
  for (const series of [z11Im, z12Im, z22Im]) series.fill(im, base, to)
  for (const series of [z11Re, z12Re, z22Re]) series.fill(-im * spring.loss, base, to)
}

/**
 * Impedance matrix of cavity `index` at every node into ws.z11/z12/z22: p1 = z11 v1 - z12 v2, p2 = z12 v1 - z22 v2,
 * velocities positive towards the room.
 * @source transfer matrices of fluid layers in impedance form, own derivation
 */
export function fillCavityImpedance(ws: Workspace, index: number, cavity: CavityModel, tone: Tone): void {
  const base = index * MAX_NODES
  const { layers, loss, spring } = cavity
  if (spring !== null) fillSpring(ws, base, spring, tone)
  for (let place = 0; place < layers.length; place++) {
    const layer = layers[place]!
    if (layer.isFill) setFill(MEDIUM, tone, loss)
    else setAir(MEDIUM, tone, loss)
    fillLayer(ws.nodes, MEDIUM, layer.depth, tone)
    if (place === 0) storeFirst(ws, base)
    else joinNext(ws, base)
  }
}

import type { Medium } from '#acoustics/layered/medium.ts'
import type { Tone } from '#acoustics/layered/tone.ts'
import { MAX_NODES, type NodeSet } from '#acoustics/layered/workspace.ts'

/** Impedances of one symmetric layer at every node: own (Z coth) and transfer (Z / sinh), Pa s/m. */
export interface LayerSeries {
  readonly ownRe: Float64Array
  readonly ownIm: Float64Array
  readonly transferRe: Float64Array
  readonly transferIm: Float64Array
}

function layerSeries(): LayerSeries {
  const series = () => new Float64Array(MAX_NODES)
  return { ownRe: series(), ownIm: series(), transferRe: series(), transferIm: series() }
}

/** The layer worked out last. */
export const LAYER: LayerSeries = layerSeries()

/** Largest squared half phase |kz d / 2|^2 for the fraction of a short layer: there it is right to 3e-7. */
const SHORT_UP_TO = 4

/**
 * Impedances of a layer at every node into LAYER.
 * @param depth  m, > 0
 */
export function fillLayer(nodes: NodeSet, medium: Medium, depth: number, tone: Tone): void {
  const quarter = (depth * depth) / 4
  const longest2 = (medium.k2Re * medium.k2Re + medium.k2Im * medium.k2Im) * quarter * quarter
  if (longest2 <= SHORT_UP_TO * SHORT_UP_TO) fillShortLayer(nodes, medium, depth, tone)
  else fillLongLayer(nodes, medium, depth, tone)
}

/**
 * A layer up to two thirds of a wavelength deep, as the sum and difference of its halves j Z tan h and Z / (j tan h),
 * h = kz d / 2. With tan h = h N / D, polynomials in y = h^2, neither root nor exponential is needed.
 * @source Lambert's continued fraction of the tangent, broken off after 13, any handbook
 */
function fillShortLayer(nodes: NodeSet, medium: Medium, depth: number, { k2 }: Tone): void {
  const { ownRe, ownIm, transferRe, transferIm } = LAYER
  const { sin2, count } = nodes
  const half = depth / 2
  const quarter = half * half
  const yIm = medium.k2Im * quarter
  const zRe = medium.zkRe * half
  const zIm = medium.zkIm * half
  for (let n = 0; n < count; n++) {
    const yRe = (medium.k2Re - k2 * sin2[n]!) * quarter
    const y2Re = yRe * yRe - yIm * yIm
    const y2Im = 2 * yRe * yIm
    const y3Re = y2Re * yRe - y2Im * yIm
    const y3Im = y2Re * yIm + y2Im * yRe
    const nRe = 135135 - 17325 * yRe + 378 * y2Re - y3Re
    const nIm = -17325 * yIm + 378 * y2Im - y3Im
    const dRe = 135135 - 62370 * yRe + 3150 * y2Re - 28 * y3Re
    const dIm = -62370 * yIm + 3150 * y2Im - 28 * y3Im
    // With e = N / D: half the tangent part j z e, half the cotangent part z / (j y e).
    const perD = 0.5 / (dRe * dRe + dIm * dIm)
    const eRe = (nRe * dRe + nIm * dIm) * perD
    const eIm = (nIm * dRe - nRe * dIm) * perD
    const tanRe = -(zRe * eIm + zIm * eRe)
    const tanIm = zRe * eRe - zIm * eIm
    const yeRe = 2 * (yRe * eRe - yIm * eIm)
    const yeIm = 2 * (yRe * eIm + yIm * eRe)
    const perYe = 0.5 / (yeRe * yeRe + yeIm * yeIm)
    const cotRe = (zIm * yeRe - zRe * yeIm) * perYe
    const cotIm = -(zRe * yeRe + zIm * yeIm) * perYe
    ownRe[n] = cotRe + tanRe
    ownIm[n] = cotIm + tanIm
    transferRe[n] = cotRe - tanRe
    transferIm[n] = cotIm - tanIm
  }
}

/**
 * A layer of any depth: Z (1 + q) / (1 - q) and 2 Z e / (1 - q) with e = exp(-j kz d), q = e^2, Z = Zc kp / kz.
 * Written with the decaying exponential, so a thick absorbing layer cannot overflow.
 */
function fillLongLayer(nodes: NodeSet, medium: Medium, depth: number, { k2 }: Tone): void {
  const { k2Re, k2Im, zkRe, zkIm } = medium
  const { ownRe, ownIm, transferRe, transferIm } = LAYER
  const { sin2, count } = nodes
  for (let n = 0; n < count; n++) {
    const xRe = k2Re - k2 * sin2[n]!
    const size = Math.sqrt(xRe * xRe + k2Im * k2Im)
    let kRe: number
    let kIm: number
    if (xRe >= 0) {
      kRe = Math.sqrt((size + xRe) / 2)
      kIm = k2Im / (2 * kRe)
    } else {
      kIm = -Math.sqrt((size - xRe) / 2)
      kRe = k2Im / (2 * kIm)
    }
    const fade = Math.exp(kIm * depth)
    const eRe = fade * Math.cos(kRe * depth)
    const eIm = -fade * Math.sin(kRe * depth)
    const qRe = eRe * eRe - eIm * eIm
    const qIm = 2 * eRe * eIm
    // w = Z / (1 - q); Z = zk / kz and |kz|^2 = size
    const gap = 1 - qRe
    const norm = size * (gap * gap + qIm * qIm)
    const zRe = (zkRe * kRe + zkIm * kIm) / norm
    const zIm = (zkIm * kRe - zkRe * kIm) / norm
    const wRe = zRe * gap - zIm * qIm
    const wIm = zIm * gap + zRe * qIm
    ownRe[n] = wRe * (1 + qRe) - wIm * qIm
    ownIm[n] = wIm * (1 + qRe) + wRe * qIm
    transferRe[n] = 2 * (wRe * eRe - wIm * eIm)
    transferIm[n] = 2 * (wIm * eRe + wRe * eIm)
  }
}

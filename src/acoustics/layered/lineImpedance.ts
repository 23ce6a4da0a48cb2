import links from '#acoustics/data/links.json' with { type: 'json' }
import { bendingAt, type LeafModel } from '#acoustics/layered/leaf.ts'
import type { Tone } from '#acoustics/layered/tone.ts'

/** Copied once: reading them through the module in the inner loops is measurable. */
const STATIC_FACTOR = links.lineStiffnessFactor.value
const LOSS = links.lineLoss.value

/** What holds a board still between two lines of fasteners a span in m apart, N/m3. @source fitted, data/links.json */
export function staticStiffness(bending: number, span: number): number {
  const span2 = span * span
  return (STATIC_FACTOR * bending) / (span2 * span2)
}

/**
 * Impedance of a leaf along lines of fasteners, per area: static stiffness between the lines plus the line input
 * impedance of a wide plate, 2 m cB (1 + j) / b. Written into out[0] (re) and out[1] (im), Pa s/m.
 * @param span  m to the next line that holds this leaf still, 0 when none does (masonry, plates)
 * @param spacing  m, of the lines this force acts along
 * @source Cremer and Heckl, Structure-Borne Sound (line impedance), memory; static term fitted, data/links.json
 */
export function lineImpedance(leaf: LeafModel, span: number, spacing: number, tone: Tone, out: Float64Array): void {
  const { omega } = tone
  const bending = bendingAt(leaf, tone)
  const wide = (2 * leaf.mass * Math.sqrt(omega * Math.sqrt(bending / leaf.mass))) / spacing
  const held = span > 0 ? staticStiffness(bending, span) / omega : 0
  // held (1 + 0.1 j) / j = held (0.1 - j)
  out[0] = wide + held * LOSS
  out[1] = wide - held
}

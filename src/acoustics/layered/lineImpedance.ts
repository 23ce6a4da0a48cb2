import links from '#acoustics/data/links.json' with { type: 'json' }

/** A leaf as a line of fasteners feels it. */
export interface LineFooting {
  /** kg/m2 */
  readonly mass: number
  /** N m */
  readonly bending: number
  /** m; distance to the next line that holds this leaf still, 0 when none does (masonry, plates) */
  readonly span: number
}

/**
 * Impedance of a leaf along lines of fasteners, per area: static stiffness between the lines plus the line input
 * impedance of a wide plate, 2 m cB (1 + j) / b. Written into out[0] (re) and out[1] (im), Pa s/m.
 * @param spacing  m, of the lines this force acts along
 * @source Cremer and Heckl, Structure-Borne Sound (line impedance), memory; static term fitted, data/links.json
 */
export function lineImpedance(footing: LineFooting, spacing: number, hz: number, out: Float64Array): void {
  const omega = 2 * Math.PI * hz
  const bendingSpeed = Math.sqrt(omega) * (footing.bending / footing.mass) ** 0.25
  const wide = (2 * footing.mass * bendingSpeed) / spacing
  const held = footing.span > 0 ? (links.lineStiffnessFactor.value * footing.bending) / (footing.span ** 4 * omega) : 0
  // held (1 + 0.1 j) / j = held (0.1 - j)
  out[0] = wide + held * links.lineLoss.value
  out[1] = wide - held
}

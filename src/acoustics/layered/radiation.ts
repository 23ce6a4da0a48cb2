import type { Tone } from '#acoustics/layered/tone.ts'
import type { Workspace } from '#acoustics/layered/workspace.ts'

/** Below this k sqrt(S) / 2 the closed form breaks down and the panel radiates like a small piston. */
const SMALLEST_PANEL = 0.054

/**
 * Radiation efficiency of a finite panel at every node into ws.sigma.
 * @param area  m2; 10 m2 to compare with a laboratory
 * @source Davy, J. Acoust. Soc. Am. 126 (2009) 1871-1877, formula memory; agrees with direct integration of a windowed
 *   plane wave within about 0.6 dB
 */
export function fillRadiation(ws: Workspace, { k, k2 }: Tone, area: number): void {
  const halfSide = (k * Math.sqrt(area)) / 2
  const q = (2 * Math.PI) / (k2 * area)
  const { sigma } = ws
  const { cos, count } = ws.nodes
  if (halfSide <= SMALLEST_PANEL) {
    sigma.fill(1 / Math.sqrt(1 + q * q), 0, count)
    return
  }
  const grazing = 1 / ((2 / 3) * Math.sqrt((2 * halfSide) / Math.PI) - 0.124)
  const limit = Math.min(1, 1.3 * Math.sqrt(Math.PI / (2 * halfSide)))
  const slope = grazing / limit - 1
  for (let n = 0; n < count; n++) {
    const c = cos[n]!
    const g = c >= limit ? c : grazing - slope * c
    sigma[n] = 1 / Math.sqrt(g * g + q * q)
  }
}

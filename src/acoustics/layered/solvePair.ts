import { MAX_NODES, type Workspace } from '#acoustics/layered/workspace.ts'

/** By cavity: coupling of its two leaves by connections, Pa s/m. */
export interface Springs {
  readonly re: Float64Array
  readonly im: Float64Array
}

/**
 * Two leaves, the usual case, solved for both driven leaves at once by their common determinant d1 d2 - o^2: driving
 * leaf 1 gives velocities d2 and o over it, driving leaf 2 gives o and d1. Into ws.fromFar and ws.fromRoom.
 * @param pressure  Pa on the driven leaf
 * @source Cramer's rule
 */
export function solvePair(ws: Workspace, pressure: number, springs: Springs): void {
  const { diagRe, diagIm, z12Re, z12Im, load } = ws
  const { count } = ws.nodes
  const through = ws.fromFar.through2
  const throughBack = ws.fromRoom.through2
  const apartFar = ws.fromFar.difference2
  const apartRoom = ws.fromRoom.difference2
  const springRe = springs.re[0]!
  const springIm = springs.im[0]!
  const drive2 = pressure * pressure
  for (let n = 0; n < count; n++) {
    const aRe = diagRe[n]! + springRe + load[n]!
    const aIm = diagIm[n]! + springIm
    const bRe = diagRe[MAX_NODES + n]! + springRe + load[n]!
    const bIm = diagIm[MAX_NODES + n]! + springIm
    const oRe = z12Re[n]! + springRe
    const oIm = z12Im[n]! + springIm
    const detRe = aRe * bRe - aIm * bIm - oRe * oRe + oIm * oIm
    const detIm = aRe * bIm + aIm * bRe - 2 * oRe * oIm
    const scale = drive2 / (detRe * detRe + detIm * detIm)
    through[n] = scale * (oRe * oRe + oIm * oIm)
    throughBack[n] = through[n]!
    apartFar[n] = scale * ((bRe - oRe) * (bRe - oRe) + (bIm - oIm) * (bIm - oIm))
    apartRoom[n] = scale * ((aRe - oRe) * (aRe - oRe) + (aIm - oIm) * (aIm - oIm))
  }
}

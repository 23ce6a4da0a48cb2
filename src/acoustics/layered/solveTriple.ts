import type { Springs } from '#acoustics/layered/solvePair.ts'
import { MAX_NODES, type Workspace } from '#acoustics/layered/workspace.ts'

/**
 * Three leaves, a new lining before an old wall, solved for both driven outer leaves at once. With diagonal a, b, c and
 * couplings o (leaves 1 and 2) and q (2 and 3) the determinant is c (ab - o^2) - a q^2; driving leaf 1 gives velocities
 * bc - q^2, oc, oq over it, driving leaf 3 gives oq, aq, ab - o^2. Into ws.fromFar and ws.fromRoom.
 * @param pressure  Pa on the driven leaf
 * @source Cramer's rule
 */
export function solveTriple(ws: Workspace, pressure: number, springs: Springs): void {
  const { diagRe, diagIm, z12Re, z12Im, load } = ws
  const { count } = ws.nodes
  const through = ws.fromFar.through2
  const throughBack = ws.fromRoom.through2
  const apartFar = ws.fromFar.difference2
  const apartRoom = ws.fromRoom.difference2
  const firstRe = springs.re[0]!
  const firstIm = springs.im[0]!
  const secondRe = springs.re[1]!
  const secondIm = springs.im[1]!
  const drive2 = pressure * pressure
  for (let n = 0; n < count; n++) {
    const m = MAX_NODES + n
    const l = MAX_NODES + m
    const aRe = diagRe[n]! + firstRe + load[n]!
    const aIm = diagIm[n]! + firstIm
    const bRe = diagRe[m]! + firstRe + secondRe
    const bIm = diagIm[m]! + firstIm + secondIm
    const cRe = diagRe[l]! + secondRe + load[n]!
    const cIm = diagIm[l]! + secondIm
    const oRe = z12Re[n]! + firstRe
    const oIm = z12Im[n]! + firstIm
    const qRe = z12Re[m]! + secondRe
    const qIm = z12Im[m]! + secondIm
    // Minors of the outer leaves, ab - o^2 and bc - q^2.
    const roomRe = aRe * bRe - aIm * bIm - oRe * oRe + oIm * oIm
    const roomIm = aRe * bIm + aIm * bRe - 2 * oRe * oIm
    const farRe = bRe * cRe - bIm * cIm - qRe * qRe + qIm * qIm
    const farIm = bRe * cIm + bIm * cRe - 2 * qRe * qIm
    const q2Re = qRe * qRe - qIm * qIm
    const q2Im = 2 * qRe * qIm
    const detRe = cRe * roomRe - cIm * roomIm - aRe * q2Re + aIm * q2Im
    const detIm = cRe * roomIm + cIm * roomRe - aRe * q2Im - aIm * q2Re
    const scale = drive2 / (detRe * detRe + detIm * detIm)
    const o2 = oRe * oRe + oIm * oIm
    const q2 = qRe * qRe + qIm * qIm
    through[n] = scale * o2 * q2
    throughBack[n] = through[n]!
    const nearFarRe = farRe - oRe * cRe + oIm * cIm
    const nearFarIm = farIm - oRe * cIm - oIm * cRe
    apartFar[n] = scale * (nearFarRe * nearFarRe + nearFarIm * nearFarIm)
    apartFar[m] = scale * o2 * ((cRe - qRe) * (cRe - qRe) + (cIm - qIm) * (cIm - qIm))
    const nearRoomRe = roomRe - aRe * qRe + aIm * qIm
    const nearRoomIm = roomIm - aRe * qIm - aIm * qRe
    apartRoom[n] = scale * q2 * ((aRe - oRe) * (aRe - oRe) + (aIm - oIm) * (aIm - oIm))
    apartRoom[m] = scale * (nearRoomRe * nearRoomRe + nearRoomIm * nearRoomIm)
  }
}

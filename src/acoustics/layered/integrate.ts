import { fillDiagonal, fillIncidence, loadByPlaneWaves, loadByRadiation } from '#acoustics/layered/assembleMatrix.ts'
import { fillCavityImpedance } from '#acoustics/layered/cavity.ts'
import { connectionSpring } from '#acoustics/layered/connection.ts'
import { fillLeafImpedance } from '#acoustics/layered/leaf.ts'
import { fillNodes } from '#acoustics/layered/nodes.ts'
import { directFraction, meanDifference, structureFraction } from '#acoustics/layered/paths.ts'
import { fillRadiation } from '#acoustics/layered/radiation.ts'
import type { Run } from '#acoustics/layered/run.ts'
import { solveSquares } from '#acoustics/layered/solve.ts'
import { setTone } from '#acoustics/layered/tone.ts'

/** Springs of all connections at one tone: their sum by cavity where they act beside the air, and each one's size. */
function fillSprings(run: Run): void {
  const { leaves, connections } = run.model
  const { springs, spring, spring2, tone } = run
  for (let i = 0; i < connections.length; i++) {
    springs.re[i] = 0
    springs.im[i] = 0
    const list = connections[i]!
    for (let j = 0; j < list.length; j++) {
      connectionSpring(list[j]!, leaves[i]!, leaves[i + 1]!, tone, spring)
      spring2[i]![j] = spring[0]! * spring[0]! + spring[1]! * spring[1]!
      if (!list[j]!.isSpring) continue
      springs.re[i]! += spring[0]!
      springs.im[i]! += spring[1]!
    }
  }
}

/** Impedances, loads and windows at every angle of one tone. */
function prepare(run: Run): void {
  const { ws, model, method, tone } = run
  fillNodes(ws.nodes, model.leaves, tone, run.nodesPerSide)
  for (let i = 0; i < model.leaves.length; i++) {
    fillLeafImpedance(ws, i, model.leaves[i]!, tone)
  }
  if (!(ws.nodes.plain && run.cavitiesAtHz === tone.hz)) {
    for (let i = 0; i < model.cavities.length; i++) {
      fillCavityImpedance(ws, i, model.cavities[i]!, tone)
    }
    fillRadiation(ws, tone, run.area)
    run.cavitiesAtHz = ws.nodes.plain ? tone.hz : 0
  }
  fillDiagonal(ws, model.leaves, tone, method.studsBend)
  fillIncidence(ws, model.leaves, tone)
  fillSprings(run)
}

/**
 * Fraction of diffuse sound a construction lets through at one frequency.
 * @param hz  Hz
 * @param stiffness  factor on every Young's modulus
 * @returns > 0; may exceed 1 by a little for a very light leaf at its resonance
 */
export function transmittedAt(run: Run, hz: number, stiffness: number): number {
  const { ws, model, bothWays } = run
  const leaves = model.leaves.length
  setTone(run.tone, hz, stiffness)
  prepare(run)
  loadByRadiation(ws)
  solveSquares(ws, leaves, 2, run.springs, bothWays ? 'both' : 'far')
  const direct = directFraction(ws)
  if (!run.hasConnections) return direct
  for (let cavity = 0; cavity < model.cavities.length; cavity++) {
    run.drivenFromFar[cavity] = meanDifference(ws, ws.fromFar, cavity)
    if (bothWays) run.drivenFromRoom[cavity] = meanDifference(ws, ws.fromRoom, cavity)
  }
  loadByPlaneWaves(ws)
  solveSquares(ws, leaves, 1, run.noSprings, bothWays ? 'both' : 'room')
  return direct + structureFraction(run)
}

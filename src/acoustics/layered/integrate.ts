import { SOUND_SPEED } from '#acoustics/layered/air.ts'
import {
  fillDiagonal,
  fillIncidence,
  loadByPlaneWaves,
  loadByRadiation,
  type Tone,
} from '#acoustics/layered/assembleMatrix.ts'
import { fillCavityImpedance } from '#acoustics/layered/cavity.ts'
import type { SystemModel } from '#acoustics/layered/compile.ts'
import { connectionSpring } from '#acoustics/layered/connection.ts'
import { fillLeafImpedance } from '#acoustics/layered/leaf.ts'
import type { MethodOptions } from '#acoustics/layered/method.ts'
import { fillNodes } from '#acoustics/layered/nodes.ts'
import { directFraction, meanDifference, structureFraction } from '#acoustics/layered/paths.ts'
import { fillRadiation } from '#acoustics/layered/radiation.ts'
import { solveSquares } from '#acoustics/layered/solve.ts'
import type { Springs } from '#acoustics/layered/solvePair.ts'
import type { Workspace } from '#acoustics/layered/workspace.ts'

/** Everything that stays the same over the frequencies of one prediction. */
export interface Run {
  readonly model: SystemModel
  readonly method: MethodOptions
  /** m2 */
  readonly area: number
  readonly ws: Workspace
  /** Sum of the springs of each cavity, Pa s/m. */
  readonly springs: Springs
  readonly noSprings: Springs
  /** Spring of the connection in hand. */
  readonly spring: Float64Array
  /** Squared size of every connection's spring, by cavity and place in its list. */
  readonly spring2: readonly Float64Array[]
  /** By cavity: mean squared velocity difference under diffuse sound from either side. */
  readonly drivenFromFar: Float64Array
  readonly drivenFromRoom: Float64Array
  readonly hasConnections: boolean
  /** Sound from both sides is averaged: only where the structure carries some and the two sides differ. */
  readonly bothWays: boolean
  /** Frequency the cavity impedances at the plain nodes belong to. */
  cavitiesAtHz: number
}

/** Springs of all connections at one tone: their sum by cavity where they act beside the air, and each one's size. */
function fillSprings(run: Run, tone: Tone): void {
  const { leaves, connections } = run.model
  const { springs, spring, spring2 } = run
  for (let i = 0; i < connections.length; i++) {
    springs.re[i] = 0
    springs.im[i] = 0
    const list = connections[i]!
    for (let j = 0; j < list.length; j++) {
      connectionSpring(list[j]!, leaves[i]!, leaves[i + 1]!, tone.hz, tone.stiffness, spring)
      spring2[i]![j] = spring[0]! * spring[0]! + spring[1]! * spring[1]!
      if (!list[j]!.isSpring) continue
      springs.re[i]! += spring[0]!
      springs.im[i]! += spring[1]!
    }
  }
}

/** Impedances, loads and windows at every angle of one tone. */
function prepare(run: Run, tone: Tone): void {
  const { ws, model, method } = run
  fillNodes(ws.nodes, model.leaves, tone.hz, tone.stiffness, method.gaussNodes)
  for (let i = 0; i < model.leaves.length; i++) {
    fillLeafImpedance(ws, i, model.leaves[i]!, tone.hz, tone.stiffness, tone.k2)
  }
  if (!(ws.nodes.plain && run.cavitiesAtHz === tone.hz)) {
    for (let i = 0; i < model.cavities.length; i++) {
      fillCavityImpedance(ws, i, model.cavities[i]!, tone.hz, tone.k2)
    }
    fillRadiation(ws, tone.hz, run.area)
    run.cavitiesAtHz = ws.nodes.plain ? tone.hz : 0
  }
  fillDiagonal(ws, model.leaves, tone, method.studsBend)
  fillIncidence(ws, model.leaves, tone.hz)
  fillSprings(run, tone)
}

/**
 * Fraction of diffuse sound a construction lets through at one frequency.
 * @param hz  Hz
 * @param stiffness  factor on every Young's modulus
 * @returns > 0; may exceed 1 by a little for a very light leaf at its resonance
 */
export function transmittedAt(run: Run, hz: number, stiffness: number): number {
  const { ws, model, bothWays } = run
  const k = (2 * Math.PI * hz) / SOUND_SPEED
  const leaves = model.leaves.length
  prepare(run, { hz, stiffness, k2: k * k })
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
  return direct + structureFraction(run, k)
}

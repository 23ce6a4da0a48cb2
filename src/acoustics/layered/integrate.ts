import { AIR_IMPEDANCE, SOUND_SPEED } from '#acoustics/layered/air.ts'
import {
  fillDiagonal,
  fillWindow,
  loadByPlaneWaves,
  loadByRadiation,
  type Tone,
} from '#acoustics/layered/assembleMatrix.ts'
import { fillCavityImpedance } from '#acoustics/layered/cavity.ts'
import type { SystemModel } from '#acoustics/layered/compile.ts'
import { type ConnectionModel, connectionSpring } from '#acoustics/layered/connection.ts'
import { fillLeafImpedance } from '#acoustics/layered/leaf.ts'
import type { MethodOptions } from '#acoustics/layered/method.ts'
import { fillNodes } from '#acoustics/layered/nodes.ts'
import { fillRadiation } from '#acoustics/layered/radiation.ts'
import { solveSquares } from '#acoustics/layered/solve.ts'
import type { Springs } from '#acoustics/layered/solvePair.ts'
import { MAX_NODES, type Squares, type Workspace } from '#acoustics/layered/workspace.ts'

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
  fillWindow(ws, model.leaves, tone.hz)
  fillSprings(run, tone)
}

/** Fraction of the sound that passes by air and springs together: the same in both directions. */
function directFraction({ nodes, sigma, window, fromFar }: Workspace): number {
  const { through2 } = fromFar
  let sum = 0
  for (let n = 0; n < nodes.count; n++) sum += nodes.weight[n]! * nodes.sin[n]! * window[n]! * sigma[n]! * through2[n]!
  return 2 * AIR_IMPEDANCE ** 2 * sum
}

/** Mean squared velocity difference across a cavity under diffuse sound. */
function meanDifference({ nodes, window }: Workspace, { difference2 }: Squares, cavity: number): number {
  const base = cavity * MAX_NODES
  let sum = 0
  for (let n = 0; n < nodes.count; n++) sum += nodes.weight[n]! * nodes.sin[n]! * window[n]! * difference2[base + n]!
  return 2 * sum
}

/** Wavenumber below which a spring of that spacing already carries the wave, 1/m. */
function maskWavenumber(connection: ConnectionModel): number {
  return connection.kind === 'line' ? Math.PI / connection.spacing : Math.sqrt((4 * Math.PI) / connection.area)
}

/**
 * Sound a pair of unit forces across a cavity radiates on one side, by free bending waves. `response` is that to a
 * unit pressure on that side: the matrix is symmetric, so this is the transfer sought.
 * @source line and point excitation of an endless layered plate, own derivation; limits agree with Cremer and Heckl
 */
function radiatedPower(
  { nodes }: Workspace,
  response: Squares,
  cavity: number,
  connection: ConnectionModel,
  k: number,
): number {
  const { difference2 } = response
  const base = cavity * MAX_NODES
  const edge = maskWavenumber(connection)
  const isLine = connection.kind === 'line'
  let sum = 0
  for (let n = 0; n < nodes.count; n++) {
    const kt = k * nodes.sin[n]!
    const mask = connection.isMasked ? Math.min(1, Math.max(0, (kt - edge) / (0.5 * edge) + 0.5)) : 1
    sum += nodes.weight[n]! * difference2[base + n]! * mask * (isLine ? 1 : kt)
  }
  return (AIR_IMPEDANCE ** 2 * k * sum) / (isLine ? Math.PI : 2 * Math.PI)
}

/** Fraction all connections pass in one direction; `response` to a pressure on the receiving side. */
function structureFraction(run: Run, driven: Float64Array, response: Squares, k: number): number {
  const { ws, model } = run
  let sum = 0
  for (let cavity = 0; cavity < model.connections.length; cavity++) {
    const list = model.connections[cavity]!
    for (let j = 0; j < list.length; j++) {
      const connection = list[j]!
      const extent = connection.kind === 'line' ? connection.spacing : connection.area
      const power = connection.share * run.spring2[cavity]![j]! * extent * driven[cavity]!
      sum += power * radiatedPower(ws, response, cavity, connection, k)
    }
  }
  return sum
}

function fillDriven(run: Run, bothWays: boolean): void {
  const { ws, drivenFromFar, drivenFromRoom } = run
  for (let cavity = 0; cavity < run.model.cavities.length; cavity++) {
    drivenFromFar[cavity] = meanDifference(ws, ws.fromFar, cavity)
    if (bothWays) drivenFromRoom[cavity] = meanDifference(ws, ws.fromRoom, cavity)
  }
}

/**
 * Fraction of diffuse sound a construction lets through at one frequency.
 * @param hz  Hz
 * @param stiffness  factor on every Young's modulus
 * @returns > 0; may exceed 1 by a little for a very light leaf at its resonance
 */
export function transmittedAt(run: Run, hz: number, stiffness: number): number {
  const { ws, model } = run
  const k = (2 * Math.PI * hz) / SOUND_SPEED
  const leaves = model.leaves.length
  prepare(run, { hz, stiffness, k2: k * k })
  loadByRadiation(ws)
  solveSquares(ws, leaves, 2, run.springs, run.bothWays ? 'both' : 'far')
  const direct = directFraction(ws)
  if (!run.hasConnections) return direct
  fillDriven(run, run.bothWays)
  loadByPlaneWaves(ws)
  solveSquares(ws, leaves, 1, run.noSprings, run.bothWays ? 'both' : 'room')
  const towardsRoom = structureFraction(run, run.drivenFromFar, ws.fromRoom, k)
  if (!run.bothWays) return direct + towardsRoom
  return direct + (towardsRoom + structureFraction(run, run.drivenFromRoom, ws.fromFar, k)) / 2
}

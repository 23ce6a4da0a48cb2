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
import { type Springs, solveVelocities } from '#acoustics/layered/solve.ts'
import { MAX_NODES, type Workspace } from '#acoustics/layered/workspace.ts'

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
  /** By cavity: squared velocity difference under sound, both directions added as they are needed. */
  readonly driven: Float64Array
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

/** Fraction of the sound that passes by air and springs together; velocities of the last solve. */
function directFraction(ws: Workspace, lastLeaf: number): number {
  const { nodes, sigma, window, vRe, vIm } = ws
  const base = lastLeaf * MAX_NODES
  let sum = 0
  for (let n = 0; n < nodes.count; n++) {
    const re = vRe[base + n]!
    const im = vIm[base + n]!
    const v2 = re * re + im * im
    sum += nodes.weight[n]! * nodes.sin[n]! * window[n]! * sigma[n]! * v2
  }
  return 2 * AIR_IMPEDANCE ** 2 * sum
}

/** Mean squared velocity difference across a cavity under diffuse sound; velocities of the last solve. */
function drivenDifference(ws: Workspace, cavity: number): number {
  const { nodes, window, vRe, vIm } = ws
  const a = cavity * MAX_NODES
  const b = a + MAX_NODES
  let sum = 0
  for (let n = 0; n < nodes.count; n++) {
    const re = vRe[a + n]! - vRe[b + n]!
    const im = vIm[a + n]! - vIm[b + n]!
    const d2 = re * re + im * im
    sum += nodes.weight[n]! * nodes.sin[n]! * window[n]! * d2
  }
  return 2 * sum
}

/** Squared wavenumber below which a spring of that spacing already carries the wave, 1/m. */
function maskWavenumber(connection: ConnectionModel): number {
  return connection.kind === 'line' ? Math.PI / connection.spacing : Math.sqrt((4 * Math.PI) / connection.area)
}

/**
 * Sound a pair of unit forces across a cavity radiates on one side, by free bending waves; velocities of the last
 * solve are the response to a unit pressure on that side (the matrix is symmetric, so this is the transfer sought).
 * @source line and point excitation of an endless layered plate, own derivation; limits agree with Cremer and Heckl
 */
function radiatedPower(ws: Workspace, cavity: number, connection: ConnectionModel, k: number): number {
  const { nodes, vRe, vIm } = ws
  const a = cavity * MAX_NODES
  const b = a + MAX_NODES
  const edge = maskWavenumber(connection)
  const isLine = connection.kind === 'line'
  let sum = 0
  for (let n = 0; n < nodes.count; n++) {
    const sine = nodes.sin[n]!
    const mask = connection.isMasked ? Math.min(1, Math.max(0, (k * sine - edge) / (0.5 * edge) + 0.5)) : 1
    const re = vRe[a + n]! - vRe[b + n]!
    const im = vIm[a + n]! - vIm[b + n]!
    const h2 = re * re + im * im
    sum += nodes.weight[n]! * h2 * mask * (isLine ? 1 : k * sine)
  }
  return (AIR_IMPEDANCE ** 2 * k * sum) / (isLine ? Math.PI : 2 * Math.PI)
}

/** Fraction passed by all connections; needs `run.driven` and solves once for what they radiate. */
function structureFraction(run: Run, tone: Tone, towardsRoom: boolean): number {
  const { ws, model } = run
  loadByPlaneWaves(ws)
  const count = model.leaves.length
  solveVelocities(ws, count, 1, towardsRoom ? count - 1 : 0, run.noSprings)
  const k = Math.sqrt(tone.k2)
  let sum = 0
  for (let cavity = 0; cavity < model.connections.length; cavity++) {
    const list = model.connections[cavity]!
    for (let j = 0; j < list.length; j++) {
      const connection = list[j]!
      const extent = connection.kind === 'line' ? connection.spacing : connection.area
      const power = connection.share * run.spring2[cavity]![j]! * extent * run.driven[cavity]!
      sum += power * radiatedPower(ws, cavity, connection, k)
    }
  }
  return sum
}

function hasConnections(model: SystemModel): boolean {
  return model.connections.some((list) => list.length > 0)
}

/** Fraction of diffuse sound let through in one direction. */
function fractionOneWay(run: Run, tone: Tone, towardsRoom: boolean): number {
  const { ws, model } = run
  const count = model.leaves.length
  loadByRadiation(ws)
  solveVelocities(ws, count, 2, towardsRoom ? 0 : count - 1, run.springs)
  const direct = directFraction(ws, towardsRoom ? count - 1 : 0)
  if (!hasConnections(model)) return direct
  for (let cavity = 0; cavity < count - 1; cavity++) run.driven[cavity] = drivenDifference(ws, cavity)
  return direct + structureFraction(run, tone, towardsRoom)
}

/**
 * Fraction of diffuse sound a construction lets through at one frequency.
 * @param hz  Hz
 * @param stiffness  factor on every Young's modulus
 * @returns > 0; may exceed 1 by a little for a very light leaf at its resonance
 */
export function transmittedAt(run: Run, hz: number, stiffness: number): number {
  const k = (2 * Math.PI * hz) / SOUND_SPEED
  const tone: Tone = { hz, stiffness, k2: k * k }
  prepare(run, tone)
  const forward = fractionOneWay(run, tone, true)
  const needsBoth = run.method.directions === 'both' && !run.model.isSymmetric && hasConnections(run.model)
  return needsBoth ? (forward + fractionOneWay(run, tone, false)) / 2 : forward
}

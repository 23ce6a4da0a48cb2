import { AIR_IMPEDANCE } from '#acoustics/layered/air.ts'
import type { ConnectionModel } from '#acoustics/layered/connection.ts'
import type { Run } from '#acoustics/layered/run.ts'
import type { Tone } from '#acoustics/layered/tone.ts'
import { MAX_NODES, type Squares, type Workspace } from '#acoustics/layered/workspace.ts'

/** Fraction of the sound that passes by air and springs together: the same in both directions. */
export function directFraction({ nodes, sigma, incidence, fromFar }: Workspace): number {
  const { through2 } = fromFar
  const { count } = nodes
  let sum = 0
  for (let n = 0; n < count; n++) sum += incidence[n]! * sigma[n]! * through2[n]!
  return 2 * AIR_IMPEDANCE ** 2 * sum
}

/** Mean squared velocity difference across a cavity under diffuse sound. */
export function meanDifference({ nodes, incidence }: Workspace, { difference2 }: Squares, cavity: number): number {
  const base = cavity * MAX_NODES
  const { count } = nodes
  let sum = 0
  for (let n = 0; n < count; n++) sum += incidence[n]! * difference2[base + n]!
  return 2 * sum
}

/** Wavenumber below which a spring of that spacing already carries the wave, 1/m; 0 where it carries none. */
function maskWavenumber(connection: ConnectionModel): number {
  if (!connection.isMasked) return 0
  return connection.kind === 'line' ? Math.PI / connection.spacing : Math.sqrt((4 * Math.PI) / connection.area)
}

/** What a pair of unit forces radiates towards the room and towards the far side. */
const RADIATED = { towardsRoom: 0, towardsFar: 0 }

/**
 * Sound a pair of unit forces across a cavity radiates on both sides, by free bending waves, into RADIATED. The response
 * to a unit pressure on a side is that side's transfer: the matrix is symmetric.
 * @source line and point excitation of an endless layered plate, own derivation; limits agree with Cremer and Heckl
 */
function radiate(
  { nodes, fromFar, fromRoom }: Workspace,
  cavity: number,
  connection: ConnectionModel,
  { k }: Tone,
): void {
  const toRoom = fromRoom.difference2
  const toFar = fromFar.difference2
  const { sin, weight, count } = nodes
  const base = cavity * MAX_NODES
  const edge = maskWavenumber(connection)
  const perEdge = edge > 0 ? 2 / edge : 0
  const isLine = connection.kind === 'line'
  let room = 0
  let far = 0
  for (let n = 0; n < count; n++) {
    const kt = k * sin[n]!
    const mask = edge > 0 ? Math.min(1, Math.max(0, (kt - edge) * perEdge + 0.5)) : 1
    const share = weight[n]! * mask * (isLine ? 1 : kt)
    room += share * toRoom[base + n]!
    far += share * toFar[base + n]!
  }
  const scale = (AIR_IMPEDANCE ** 2 * k) / (isLine ? Math.PI : 2 * Math.PI)
  RADIATED.towardsRoom = scale * room
  RADIATED.towardsFar = scale * far
}

/** Fraction all connections pass towards the room, or the mean of both directions. */
export function structureFraction(run: Run): number {
  const { ws, model, tone, spring2, drivenFromFar, drivenFromRoom, bothWays } = run
  let sum = 0
  for (let cavity = 0; cavity < model.connections.length; cavity++) {
    const list = model.connections[cavity]!
    for (let j = 0; j < list.length; j++) {
      const connection = list[j]!
      const extent = connection.kind === 'line' ? connection.spacing : connection.area
      radiate(ws, cavity, connection, tone)
      const there = drivenFromFar[cavity]! * RADIATED.towardsRoom
      const power = bothWays ? (there + drivenFromRoom[cavity]! * RADIATED.towardsFar) / 2 : there
      sum += connection.share * spring2[cavity]![j]! * extent * power
    }
  }
  return sum
}

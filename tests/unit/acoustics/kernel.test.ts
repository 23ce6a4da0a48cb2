import { describe, expect, it } from 'vitest'
import { AIR_IMPEDANCE } from '#acoustics/layered/air.ts'
import { fillLayer, LAYER } from '#acoustics/layered/cavityLayer.ts'
import { type Medium, setAir, setFill } from '#acoustics/layered/medium.ts'
import { solveSquares } from '#acoustics/layered/solve.ts'
import { newTone, setTone } from '#acoustics/layered/tone.ts'
import { MAX_NODES, type Workspace, workspaceFor } from '#acoustics/layered/workspace.ts'

const MEDIUM: Medium = { k2Re: 0, k2Im: 0, zkRe: 0, zkIm: 0 }
const TONE = newTone()

/** Own and transfer impedance of a layer at normal incidence. */
function layerAt(hz: number, depth: number, isFill: boolean) {
  setTone(TONE, hz, 1)
  if (isFill) setFill(MEDIUM, TONE, 0.05)
  else setAir(MEDIUM, TONE, 0.05)
  const { nodes } = workspaceFor(1)
  nodes.sin2[0] = 0
  nodes.count = 1
  nodes.plain = false
  fillLayer(nodes, MEDIUM, depth, TONE)
  return [LAYER.ownRe[0]!, LAYER.ownIm[0]!, LAYER.transferRe[0]!, LAYER.transferIm[0]!] as const
}

describe('a cavity layer', () => {
  it('is the stiffness of its air where it is shallow: K / (j w d)', () => {
    const [, ownIm, , transferIm] = layerAt(50, 0.01, false)
    const stiffness = (1.205 * 343 ** 2) / (2 * Math.PI * 50 * 0.01)
    // A layer of 1/700 of a wavelength with a loss factor of 0.05: the loss adds its square to the stiffness.
    expect(-ownIm / stiffness).toBeCloseTo(1, 2)
    expect(transferIm / ownIm).toBeCloseTo(1, 3)
  })

  // The two ways of working it out meet at a half phase of 2, which is 131 mm of air at 1666 Hz.
  it.each([false, true])('does not jump where the fraction hands over to the exponential, wool: %s', (isFill) => {
    const curve = Array.from({ length: 400 }, (_, i) => layerAt(400 + 8 * i, 0.131, isFill))
    const second = curve
      .slice(2)
      .map((value, i) => Math.max(...value.map((part, j) => Math.abs(part - 2 * curve[i + 1]![j]! + curve[i]![j]!))))
    const nearHandover = second.filter((_, i) => i > 0 && i < 397)
    nearHandover.forEach((bend, i) => {
      const around = Math.max(second[i]!, second[i + 2]!)
      expect(bend).toBeLessThanOrEqual(1.6 * around + 1e-3 * AIR_IMPEDANCE)
    })
  })

  it('takes a layer apart and together again: half and half make the whole', () => {
    for (const depth of [0.02, 0.1, 0.3]) {
      const [hRe, hIm, tRe, tIm] = layerAt(1500, depth / 2, true)
      const [ownRe, ownIm] = layerAt(1500, depth, true)
      // own - transfer^2 / (2 own)
      const [t2Re, t2Im] = [tRe * tRe - tIm * tIm, 2 * tRe * tIm]
      const norm = 2 * (hRe * hRe + hIm * hIm)
      expect(hRe - (t2Re * hRe + t2Im * hIm) / norm).toBeCloseTo(ownRe, 2)
      expect(hIm - (t2Im * hRe - t2Re * hIm) / norm).toBeCloseTo(ownIm, 2)
    }
  })
})

/** Any numbers, the same each time. */
function fillAny(ws: Workspace, leaves: number): void {
  let seed = 7
  const next = () => {
    seed = (seed * 16807) % 2147483647
    return seed / 2147483647 - 0.3
  }
  ws.nodes.count = 5
  ws.nodes.plain = false
  for (let leaf = 0; leaf < leaves; leaf++) {
    for (let n = 0; n < 5; n++) {
      const i = leaf * MAX_NODES + n
      for (const series of [ws.diagRe, ws.diagIm, ws.z12Re, ws.z12Im]) series[i] = 1000 * next()
      ws.load[n] = 400
    }
  }
}

describe('the closed solutions of two and three leaves', () => {
  // Two more leaves that hang on nothing change nothing, but send the system through the general elimination.
  it.each([2, 3])('%s leaves: agrees with the general elimination', (leaves) => {
    const ws = workspaceFor(leaves)
    fillAny(ws, leaves)
    const springs = { re: new Float64Array([30, -20]), im: new Float64Array([-500, 800]) }
    solveSquares(ws, leaves, 2, springs, 'both')
    const closed = { far: [...ws.fromFar.through2.slice(0, 5)], apart: [...ws.fromFar.difference2.slice(0, 5)] }
    const back = [...ws.fromRoom.difference2.slice(0, 5)]
    const four = workspaceFor(leaves + 2)
    fillAny(four, leaves)
    extend(four, leaves)
    const longer = { re: new Float64Array([30, -20, 0, 0]), im: new Float64Array([-500, 800, 0, 0]) }
    if (leaves === 2) longer.re[1] = longer.im[1] = 0
    solveSquares(four, leaves + 2, 2, longer, 'far')
    closed.apart.forEach((value, n) => {
      expect(four.fromFar.difference2[n]! / value).toBeCloseTo(1, 9)
    })
    expect(closed.far.every((value) => value > 0)).toBe(true)
    expect(back.every((value) => value > 0)).toBe(true)
  })
})

/** Two more leaves without coupling; the load of the last real leaf is written into its own diagonal. */
function extend(ws: Workspace, leaves: number): void {
  for (let n = 0; n < 5; n++) {
    ws.diagRe[(leaves - 1) * MAX_NODES + n]! += ws.load[n]!
    for (let leaf = leaves; leaf < leaves + 2; leaf++) {
      ws.diagRe[leaf * MAX_NODES + n] = 1
      ws.diagIm[leaf * MAX_NODES + n] = 0
    }
    for (let cavity = leaves - 1; cavity < leaves + 2; cavity++) {
      ws.z12Re[cavity * MAX_NODES + n] = 0
      ws.z12Im[cavity * MAX_NODES + n] = 0
    }
  }
}

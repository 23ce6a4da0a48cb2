import { describe, expect, it } from 'vitest'
import { gaussRule } from '#acoustics/layered/gauss.ts'
import { modelLeaf } from '#acoustics/layered/leaf.ts'
import { fillNodes } from '#acoustics/layered/nodes.ts'
import { newTone, setTone } from '#acoustics/layered/tone.ts'
import { workspaceFor } from '#acoustics/layered/workspace.ts'
import { leafOf } from '../../support/acoustics.ts'

describe('gaussRule', () => {
  it('integrates polynomials up to degree 2n - 1 exactly', () => {
    for (const count of [2, 5, 8, 16]) {
      const { nodes, weights } = gaussRule(count)
      const integral = (power: number) => nodes.reduce((sum, x, i) => sum + weights[i]! * x ** power, 0)
      expect(integral(2 * count - 2)).toBeCloseTo(2 / (2 * count - 1), 12)
      expect(integral(2 * count - 1)).toBeCloseTo(0, 12)
    }
  })
})

describe('fillNodes', () => {
  it('covers all angles of incidence, with a coincidence or without', () => {
    const { nodes } = workspaceFor(2)
    const tone = newTone()
    const leaves = [leafOf('gypsum-type-x', 15.9), leafOf('glass', 6)].map((leaf) => modelLeaf(leaf, null))
    for (const hz of [100, 2500, 5000]) {
      setTone(tone, hz, 1)
      fillNodes(nodes, leaves, tone, 8)
      const sum = (f: (n: number) => number) =>
        Array.from({ length: nodes.count }, (_, n) => f(n)).reduce((a, b) => a + b)
      // Integral of 2 sin cos over a quarter turn is 1; graded nodes are exact to 1e-4 for so plain a function.
      expect(sum((n) => nodes.weight[n]! * 2 * nodes.sin[n]! * nodes.cos[n]!)).toBeCloseTo(1, 4)
      expect(sum((n) => nodes.weight[n]!)).toBeCloseTo(Math.PI / 2, 4)
    }
    expect(nodes.plain).toBe(false)
  })
})

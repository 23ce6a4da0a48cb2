import { describe, expect, it } from 'vitest'
import type { BoardLayer, CavityLayer, Layer } from '#assemblies/layer.ts'
import { layerProblems } from '#assemblies/layerProblems.ts'
import { layerSchema } from '#assemblies/schema.ts'

const BOARD: BoardLayer = { kind: 'board', material: 'gypsum-type-x', thicknessMm: 15.875 }
const CAVITY: CavityLayer = { kind: 'cavity', depthMm: 88.9, link: { kind: 'wood-stud', spacingMm: 406.4 } }
const messages = (layers: readonly Layer[]): string[] => layerProblems(layers).map((problem) => problem.message)

describe('layerProblems', () => {
  it('finds nothing in a sound wall', () => {
    expect(layerProblems([BOARD, { kind: 'damping-compound' }, BOARD, CAVITY, BOARD])).toEqual([])
    expect(layerProblems([BOARD])).toEqual([])
  })

  it.each<[string, readonly Layer[], string]>([
    ['nothing', [], 'There are no layers.'],
    [
      'two cavities in a row',
      [BOARD, CAVITY, CAVITY, BOARD],
      'Layer 3 (cavity): it follows another cavity; give the two as one, or put a board between them.',
    ],
    [
      'a cavity first',
      [CAVITY, BOARD],
      'Layer 1 (cavity): its link needs a leaf on both sides, and there is no board on its far side.',
    ],
    [
      'a cavity last',
      [BOARD, CAVITY],
      'Layer 2 (cavity): its link needs a leaf on both sides, and there is no board on its room side.',
    ],
    [
      'compound on studs',
      [BOARD, CAVITY, { kind: 'damping-compound' }, BOARD],
      'Layer 3 (damping compound): it belongs between two boards.',
    ],
    [
      'filler alone',
      [BOARD, CAVITY, { kind: 'filler', name: 'foam', thicknessMm: 50, surfaceMassKgM2: 1.5 }],
      'Layer 3 (filler): it touches no board, so it forms no leaf.',
    ],
    [
      'a negative thickness',
      [{ ...BOARD, thicknessMm: -12.7 }],
      'Layer 1 (board): the thickness of -12.7 mm must be above 0 and at most 1500 mm.',
    ],
    [
      'an absurd thickness',
      [{ ...BOARD, thicknessMm: 15875 }],
      'Layer 1 (board): the thickness of 15875 mm must be above 0 and at most 1500 mm.',
    ],
    [
      'a thickness that is no number',
      [{ ...BOARD, thicknessMm: Number.NaN }],
      'Layer 1 (board): the thickness of NaN mm must be above 0 and at most 1500 mm.',
    ],
    [
      'an impossible weight',
      [{ ...BOARD, surfaceMassKgM2: 0 }],
      'Layer 1 (board): the weight of 0 kg/m2 must be above 0 and at most 5000 kg/m2.',
    ],
    [
      'a thickness that nobody makes',
      [{ ...BOARD, thicknessMm: 0.001 }],
      'Layer 1 (board): the thickness of 0.001 mm is too small to be built; check its unit.',
    ],
    [
      'a spacing in the wrong unit',
      [BOARD, { ...CAVITY, link: { kind: 'wood-stud', spacingMm: 16 } }, BOARD],
      'Layer 2 (cavity): the stud spacing of 16 mm is too small to be built; check its unit.',
    ],
    [
      'more wool than cavity',
      [BOARD, { ...CAVITY, fill: 'mineral-wool', fillMm: 140 }, BOARD],
      'Layer 2 (cavity): the fill is 140 mm deep in a cavity of 88.9 mm.',
    ],
    [
      'a depth of no fill',
      [BOARD, { ...CAVITY, fillMm: 40 }, BOARD],
      'Layer 2 (cavity): it gives the depth of a fill but names no fill.',
    ],
    [
      'an infinite spacing',
      [BOARD, { ...CAVITY, link: { kind: 'wood-stud', spacingMm: Number.POSITIVE_INFINITY } }, BOARD],
      'Layer 2 (cavity): the stud spacing of Infinity mm must be above 0 and at most 5000 mm.',
    ],
    [
      'clips at no distance',
      [
        BOARD,
        { ...CAVITY, link: { kind: 'sound-clip', frame: 'wood-stud', rowSpacingMm: 610, clipSpacingMm: 0 } },
        BOARD,
      ],
      'Layer 2 (cavity): the clip spacing of 0 mm must be above 0 and at most 5000 mm.',
    ],
  ])('names %s', (_, layers, message) => {
    expect(messages(layers)).toEqual([message])
  })

  it('names an unknown material', () => {
    const layers: readonly Layer[] = JSON.parse('[{"kind":"board","material":"cheese","thicknessMm":12.7}]')
    expect(messages(layers)).toEqual(['Layer 1 (board): the material "cheese" is not known.'])
    expect(layerSchema.safeParse(layers[0]).success).toBe(false)
  })

  it('lists several in the order of the layers', () => {
    const problems = layerProblems([CAVITY, { ...BOARD, thicknessMm: 0 }, CAVITY])
    expect(problems.map((problem) => problem.layer)).toEqual([1, 2, 3])
  })
})

import { describe, expect, test } from 'vitest'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { layersDepth } from '#assemblies/layer.ts'
import { benchSurfaces, candidatesFor, depthFrom, quietOf, sharedAssemblies } from '#ui/panels/bench/candidates.ts'
import { type Reading, rulerMarks, sentenceOf } from '#ui/panels/bench/rulerMarks.ts'
import { sampleProject } from './samples.ts'

const METRIC: Reading = { face: 'structure', measure: 'stc', unit: 'mm', margins: null }
const catalogue = builtInCatalogue()
const surfaces = benchSurfaces(sampleProject('basement').rooms[0]!)
const lined = surfaces.find(({ facts }) => facts.lining !== null)!
const concrete = surfaces.find(({ facts }) => facts.existing === 'concrete-203')!

describe('what a surface could be', () => {
  const kept = candidatesFor(lined, sharedAssemblies([lined], catalogue), false, catalogue)
  const off = candidatesFor(lined, sharedAssemblies([lined], catalogue), true, catalogue)

  test('begins with what stands there, at no depth', () => {
    expect(kept[0]!.id).toBe('as-is')
    expect(depthFrom(kept[0]!, 'finished-face')).toBe(0)
  })

  test('takes the sum of its layers from the face, and the lining more from the structure', () => {
    const clips = kept.find(({ id }) => id === 'W07')!
    const depth = layersDepth(clips.assembly!.layers)
    expect(depthFrom(clips, 'finished-face')).toBeCloseTo(depth, 9)
    expect(depthFrom(clips, 'structure')).toBeCloseTo(depth + lined.facts.lining!.thicknessMm, 9)
  })

  test('gives the lining back when it comes off', () => {
    const clips = off.find(({ id }) => id === 'W07')!
    expect(depthFrom(clips, 'structure')).toBeCloseTo(layersDepth(clips.assembly!.layers), 9)
  })

  test('marks clips over a kept board as doubtful, and off it not', () => {
    const doubtful = (list: typeof kept) => rulerMarks(list, METRIC).find(({ id }) => id === 'W07')!.doubt
    expect(doubtful(kept)).toContain('remove the existing lining first')
    expect(doubtful(off)).toBeNull()
  })

  test('has a range about every value, by STC and by band', () => {
    for (const candidate of off) {
      for (const measure of ['stc', 'loss63', 'loss125'] as const) {
        const quiet = quietOf(candidate, measure)!
        expect(quiet.low).toBeLessThan(quiet.value)
        expect(quiet.high).toBeGreaterThan(quiet.value)
      }
    }
  })

  test('is read aloud with depth and range', () => {
    const clips = off.find(({ id }) => id === 'W07')!
    expect(sentenceOf(clips, { ...METRIC, unit: 'ft-in' })).toMatch(
      /^Clips \+ 2 boards, 2 7\/8", STC \d+, likely \d+-\d+$/,
    )
  })

  test('is marked by the margin at a receiver, with its range, where that is asked', () => {
    const byCandidate = new Map([['W07', { value: -3.2, low: -11.5, high: 4.4 }]])
    const reading: Reading = { ...METRIC, measure: 'margin', margins: { receiver: 'Bedroom', byCandidate } }
    const marks = rulerMarks(off, reading)
    expect(marks).toEqual([expect.objectContaining({ id: 'W07', value: -3.2, low: -11.5, high: 4.4 })])
    expect(marks[0]!.sentence).toMatch(
      /^Clips \+ 2 boards, 73 mm, margin −4 dB, likely −12 to \+5 dB at Bedroom, STC \d+, likely/,
    )
    const nowhere = off.find(({ id }) => id === 'W06')!
    expect(sentenceOf(nowhere, reading)).toContain('margin not known at Bedroom')
  })

  test('of soil behind a wall is not rated', () => {
    const list = candidatesFor(concrete, sharedAssemblies([concrete], catalogue), false, catalogue)
    expect(rulerMarks(list, METRIC)).toEqual([])
    expect(sentenceOf(list[0]!, METRIC)).toContain('not rated')
  })

  test('is shared by several surfaces only where it can be built on all of them', () => {
    const both = sharedAssemblies([lined, concrete], catalogue).map(({ id }) => id)
    expect(both).toContain('W14')
    expect(both).not.toContain('W07')
    expect(both).not.toContain('W19')
  })
})

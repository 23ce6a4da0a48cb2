import { scaleLinear } from 'd3-scale'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BoardLayer, CavityLayer, FillerLayer, Layer } from '#assemblies/layer.ts'
import { ownAssemblyProblems } from '#assemblies/ownAssembly.ts'
import { BOARD_MATERIALS } from '#assemblies/schema.ts'
import { LINK_KINDS, usualCavity, withDepth, withLink, withOwnRow, withSpacings } from '#assemblies/usualLayer.ts'
import { sectionMarks } from '#drawing/section.ts'
import { SCREEN_STYLE } from '#drawing/style.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import { readProject } from '#project/read.ts'
import { draftOf } from '#state/draft.ts'
import { benchSurfaces } from '#ui/panels/bench/candidates.ts'
import { draftCandidate, draftCautions } from '#ui/panels/bench/editor/draftCandidate.ts'
import { anOwnAssembly } from '../../support/ownAssembly.ts'
import { CATALOGUE, openSample } from '../../support/samples.ts'

/** Lengths as they are typed, right and wrong: usual ones, the edges of what is accepted, and slips of the unit. */
const length = (most: number): fc.Arbitrary<number> =>
  fc.oneof(
    fc.double({ min: 1, max: 200, noNaN: true }),
    fc.double({ min: 1e-6, max: most, noNaN: true }),
    fc.constantFrom(1e-9, 0.05, 0.5, 5, 20, most),
  )

const board: fc.Arbitrary<BoardLayer> = fc.record({
  kind: fc.constant('board'),
  material: fc.constantFrom(...BOARD_MATERIALS),
  thicknessMm: length(1500),
  surfaceMassKgM2: fc.option(length(5000), { nil: undefined }),
})

const cavity: fc.Arbitrary<CavityLayer> = fc
  .record({
    link: fc.constantFrom(...LINK_KINDS),
    depthMm: length(3000),
    spacingMm: length(5000),
    row: fc.constantFrom('wood', 'light-steel', null),
    isFilled: fc.boolean(),
  })
  .map(({ link, depthMm, spacingMm, row, isFilled }) => {
    const deep = withDepth(withLink(usualCavity('mm'), link, 'mm'), depthMm)
    const spaced = 'spacingMm' in deep.link ? withSpacings(deep, { ...deep.link, spacingMm }) : deep
    const standing = link === 'none' ? withOwnRow(spaced, row, 'mm') : spaced
    return isFilled ? { ...standing, fill: 'mineral-wool' } : standing
  })

const filler: fc.Arbitrary<FillerLayer> = fc.record({
  kind: fc.constant('filler'),
  name: fc.constant('foam'),
  thicknessMm: length(1500),
  surfaceMassKgM2: fc.oneof(fc.constant(0), length(5000)),
  floats: fc.boolean(),
})

const layer: fc.Arbitrary<Layer> = fc.oneof(
  board,
  board,
  cavity,
  filler,
  fc.constant<Layer>({ kind: 'damping-compound' }),
)

describe('an own assembly', () => {
  it('that nothing speaks against is rated, cut through, cautioned, saved and read, on any surface', () => {
    const rooms = ['garage', 'basement'].map(openSample).flatMap((project) => {
      const room = project.rooms[0]
      const scheme = project.schemes[0]
      if (!room || !scheme) throw new Error('a sample has a room and a scheme')
      return benchSurfaces(room).map((surface) => ({ project, room, scheme, surface }))
    })
    let built = 0
    fc.assert(
      fc.property(
        fc.array(layer, { minLength: 1, maxLength: 6 }),
        fc.constantFrom(...rooms),
        fc.boolean(),
        (layers, { project, room, scheme, surface }, isLiningOff) => {
          const assembly = anOwnAssembly({ layers, surface: surface.kind })
          if (ownAssemblyProblems(assembly).length > 0) return
          built += 1
          const catalogue = projectCatalogue(project)
          const candidate = draftCandidate(surface, draftOf(assembly), isLiningOff, catalogue)
          const { rating, depthFromFaceMm, layers: all } = candidate.described
          if (rating) expect([...rating.prediction.lossDb, rating.stc].every(Number.isFinite)).toBe(true)
          const x = scaleLinear()
            .domain([-150, Math.max(1, depthFromFaceMm)])
            .range([60, 300])
          const cut = { zeroX: x(0), scale: x(1) - x(0), top: 16, height: 32, left: 60 }
          sectionMarks({ ...cut, layers: all, depthMm: depthFromFaceMm, style: SCREEN_STYLE, units: 'mm' })
          draftCautions(room, scheme, [surface.facts.id], candidate.assembly, catalogue)
          const read = readProject(JSON.stringify({ ...project, assemblies: [assembly] }), CATALOGUE)
          expect(read.ok && read.value.project.assemblies).toEqual([JSON.parse(JSON.stringify(assembly))])
        },
      ),
      { numRuns: 2500 },
    )
    expect(built).toBeGreaterThan(100)
  })
})

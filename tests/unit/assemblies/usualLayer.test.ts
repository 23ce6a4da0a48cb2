import { describe, expect, it } from 'vitest'
import type { CavityLayer } from '#assemblies/layer.ts'
import { assemblyLayerProblems } from '#assemblies/layerProblems.ts'
import { BOARD_MATERIALS } from '#assemblies/schema.ts'
import {
  LINK_KINDS,
  studMass,
  usualBoard,
  usualCavity,
  withDepth,
  withLink,
  withMembers,
  withOwnRow,
  withSpacings,
} from '#assemblies/usualLayer.ts'
import { CATALOGUE } from '../../support/samples.ts'

const UNITS = ['mm', 'ft-in'] as const
const cavity = usualCavity('mm')

describe('layers as they are first offered', () => {
  it('can be built, whatever the material, the link and the unit', () => {
    for (const unit of UNITS) {
      for (const material of BOARD_MATERIALS) {
        for (const kind of LINK_KINDS) {
          const layers = [withLink(usualCavity(unit), kind, unit), usualBoard(material)]
          expect(assemblyLayerProblems(layers)).toEqual([])
        }
      }
    }
  })

  it('weighs wood studs as the catalogue does', () => {
    const rows = [...CATALOGUE.existing.values(), ...CATALOGUE.assemblies.values()].flatMap(({ layers }) =>
      layers.flatMap((layer) => (layer.kind === 'cavity' && layer.frame?.members ? [layer.frame] : [])),
    )
    const full = rows.filter(
      ({ members, depthMm, name }) => members?.material === 'wood' && members.depthMm === depthMm && /2x\d/.test(name),
    )
    expect(full.length).toBeGreaterThan(5)
    for (const { members, massKgM2 } of full) expect(studMass(members!)).toBeCloseTo(massKgM2, 1)
  })

  it('keeps studs through both sides as deep as their cavity, and an own row as it is', () => {
    const tied = withDepth(withLink(cavity, 'wood-stud', 'mm'), 140)
    expect(tied.frame).toMatchObject({ depthMm: 140, members: { depthMm: 140, spacingMm: 400 } })
    const own = withOwnRow({ ...cavity, depthMm: 150 }, 'wood', 'mm')
    expect(withDepth(own, 200).frame).toEqual(own.frame)
    const clips = withDepth(withLink(cavity, 'sound-clip', 'mm'), 41)
    expect(clips.frame).toMatchObject({ depthMm: 41, massKgM2: 0.9 })
  })

  it('lets the weight follow spacing and stud, and takes the row out again', () => {
    const tied = withLink(cavity, 'wood-stud', 'mm')
    const wider = withSpacings(tied, { kind: 'wood-stud', spacingMm: 800 })
    expect(wider.frame?.massKgM2).toBeCloseTo((tied.frame?.massKgM2 ?? 0) / 2, 9)
    expect(wider.frame?.members?.spacingMm).toBe(800)
    const own = withOwnRow({ ...cavity, depthMm: 150 }, 'light-steel', 'mm')
    expect(withMembers(own, { material: 'light-steel', depthMm: 100, spacingMm: 300 }).frame?.depthMm).toBe(100)
    expect(withOwnRow(own, null, 'mm').frame).toBeUndefined()
  })

  it('counts of studs that reach beyond the cavity only the part inside', () => {
    const staggered = withLink(cavity, 'staggered-stud', 'mm')
    const deeper = withMembers(staggered, { material: 'wood', depthMm: 140, spacingMm: 400 })
    expect(deeper.frame).toMatchObject({ depthMm: 50, members: { depthMm: 140 } })
    expect(assemblyLayerProblems([deeper, usualBoard('osb')])).toEqual([])
  })

  it('keeps wool and depth when the link changes', () => {
    const filled: CavityLayer = { ...cavity, depthMm: 90, fill: 'mineral-wool', fillMm: 45 }
    expect(withLink(filled, 'resilient-channel', 'ft-in')).toMatchObject({
      depthMm: 90,
      fillMm: 45,
      link: { kind: 'resilient-channel', channelSpacingMm: 609.6, studSpacingMm: 406.4 },
    })
  })
})

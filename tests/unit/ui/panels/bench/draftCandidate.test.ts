import { describe, expect, it } from 'vitest'
import { layersDepth } from '#assemblies/layer.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import { draftOf } from '#state/draft.ts'
import { benchSurfaces, describeCandidate } from '#ui/panels/bench/candidates.ts'
import { draftCandidate, draftCautions } from '#ui/panels/bench/editor/draftCandidate.ts'
import { sampleProject } from '../samples.ts'

const basement = sampleProject('basement')
const garage = sampleProject('garage')

function partsOf(project: typeof garage) {
  const room = project.rooms[0]
  const scheme = project.schemes[0]
  if (!room || !scheme) throw new Error('no room')
  return { room, scheme, catalogue: projectCatalogue(project), surfaces: benchSurfaces(room) }
}

function assembly(id: string) {
  const found = projectCatalogue(garage).assemblies.get(id)
  if (!found) throw new Error(`no ${id}`)
  return found
}

describe('the assembly in the making against the surface in hand', () => {
  it('rates and takes exactly what the assembly it was copied from does', () => {
    const { catalogue, surfaces } = partsOf(garage)
    const wall = surfaces[0]!
    const copy = draftCandidate(wall, draftOf(assembly('W14')), false, catalogue)
    const original = describeCandidate(wall, 'W14', false, catalogue)
    expect(copy.described.rating?.stc).toBe(original.rating?.stc)
    expect(copy.described.rating?.prediction.lossDb).toEqual(original.rating?.prediction.lossDb)
    expect(copy.described.depthFromStructureMm).toBeCloseTo(layersDepth(assembly('W14').layers), 9)
  })

  it('notes channel over a board that stays, and not where it comes off', () => {
    const { catalogue, surfaces } = partsOf(basement)
    const lined = surfaces.find(({ facts, kind }) => kind === 'wall' && facts.lining !== null)!
    const noted = (off: boolean) =>
      draftCandidate(lined, draftOf(assembly('W03')), off, catalogue).described.notes.map(({ code }) => code)
    expect(noted(false)).toContain('resilient-over-board')
    expect(noted(true)).not.toContain('resilient-over-board')
  })

  it('brings the load on joists and the fire of a ceiling to where it is built', () => {
    const { room, scheme, catalogue } = partsOf(basement)
    const cautions = draftCautions(room, scheme, [room.ceiling.id], assembly('C06'), catalogue)
    const load = cautions.find(({ code }) => code === 'ceiling-load')
    expect(load?.text).toContain('33.0 kg/m²')
    expect(cautions.map(({ code }) => code)).toContain('fire-separation')
    expect(cautions.every(({ surfaces }) => surfaces.includes(room.ceiling.id))).toBe(true)
  })

  it('brings damp to a wall against soil', () => {
    const { room, scheme, catalogue } = partsOf(basement)
    const wall = room.walls.find(({ farSide }) => farSide === 'soil')!
    const codes = draftCautions(room, scheme, [wall.id], assembly('W20'), catalogue).map(({ code }) => code)
    expect(codes).toContain('damp')
  })
})

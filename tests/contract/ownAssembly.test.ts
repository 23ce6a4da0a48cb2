import { describe, expect, it } from 'vitest'
import { layersDepth } from '#assemblies/layer.ts'
import { leafgap } from '../support/commandLine.ts'
import { anOwnAssembly } from '../support/ownAssembly.ts'
import { openSample } from '../support/samples.ts'

const garage = openSample('garage')
const schemes = garage.schemes.map((scheme) => ({
  ...scheme,
  choices: { ...scheme.choices, 'wall-1': { assembly: 'own-1', removeLining: false } },
}))

describe('leafgap report, of a project with assemblies of its own', () => {
  it('reports them like any other, by id, depth and rating', () => {
    const project = { ...garage, assemblies: [anOwnAssembly()], schemes }
    const spoken = leafgap(['report', '-', '--json'], JSON.stringify(project))
    expect(spoken.stderr).toBe('')
    const [scheme] = JSON.parse(spoken.stdout).schemes
    expect(scheme.surfaces[0]).toMatchObject({ assembly: 'own-1' })
    expect(scheme.surfaces[0].depthFromStructureMm).toBeCloseTo(layersDepth(anOwnAssembly().layers), 9)
    expect(scheme.surfaces[0].stc).toBeGreaterThan(40)
  })

  it('says of one that is not there what it says of any unknown one', () => {
    const spoken = leafgap(['report', '-'], JSON.stringify({ ...garage, schemes: schemes.slice(0, 1), proposal: null }))
    expect(spoken.code).toBe(2)
    expect(spoken.stderr).toBe(
      'leafgap: -: assembly "own-1" is not in the catalogue, at schemes[0].choices.wall-1.assembly\n',
    )
  })
})

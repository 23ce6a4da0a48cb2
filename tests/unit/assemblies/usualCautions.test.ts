import { describe, expect, it } from 'vitest'
import { allCautions, usualCautions } from '#assemblies/usualCautions.ts'
import { usualBoard, usualCavity, withLink } from '#assemblies/usualLayer.ts'
import { anOwnAssembly } from '../../support/ownAssembly.ts'
import { CATALOGUE } from '../../support/samples.ts'

const channel = [withLink(usualCavity('mm'), 'resilient-channel', 'mm'), usualBoard('gypsum-type-x')]

describe('cautions that layers bring with them', () => {
  it('speak of channel, fire, sockets and vapour on a wall', () => {
    const said = usualCautions({ surface: 'wall', layers: channel }).join(' ')
    for (const word of ['reaches a stud', 'over an existing board', 'hold back fire', 'Sockets', 'vapour']) {
      expect(said).toContain(word)
    }
  })

  it('speak of joists, lights and the ceiling board under a ceiling', () => {
    const said = usualCautions({ surface: 'ceiling', layers: channel }).join(' ')
    for (const word of ['reaches a joist', 'existing ceiling board', 'Recessed lights']) expect(said).toContain(word)
  })

  it('speak of no joint to keep open where studs go straight through', () => {
    const through = [withLink(usualCavity('mm'), 'wood-stud', 'mm'), usualBoard('osb')]
    expect(usualCautions({ surface: 'wall', layers: through }).join(' ')).not.toContain('Nothing rigid')
  })

  it('are sentences of the built-in ones, so that a copy says nothing twice', () => {
    const known = new Set([...CATALOGUE.assemblies.values()].flatMap(({ cautions }) => cautions))
    for (const { surface, layers } of CATALOGUE.assemblies.values()) {
      for (const text of usualCautions({ surface, layers })) expect(known.has(text), text).toBe(true)
    }
    const W03 = CATALOGUE.assemblies.get('W03')
    if (!W03) throw new Error('no W03')
    expect(new Set(allCautions(W03)).size).toBe(allCautions(W03).length)
    expect(allCautions(W03)).toEqual(W03.cautions)
  })

  it('stand after the user’s own', () => {
    expect(allCautions(anOwnAssembly())[0]).toBe('Invented for a test.')
  })
})

import { describe, expect, it } from 'vitest'
import { isAssemblyFile, readAssembly, writeAssembly } from '#project/assemblyFile.ts'
import { anOwnAssembly } from '../../support/ownAssembly.ts'
import { CATALOGUE, textOf } from '../../support/samples.ts'

const shared = { format: 'leafgap-assembly', version: 1, assembly: anOwnAssembly() }

function said(value: unknown): readonly string[] {
  const read = readAssembly(typeof value === 'string' ? value : JSON.stringify(value))
  if (read.ok) return []
  return read.error.problems.length > 0 ? read.error.problems.map(({ message }) => message) : [read.error.message]
}

describe('a shared assembly', () => {
  it.each([anOwnAssembly(), ...CATALOGUE.assemblies.values()])('comes back as it was written: $id', (assembly) => {
    const read = readAssembly(writeAssembly(assembly))
    expect(read.ok && read.value).toEqual(assembly)
  })

  it('is told from a project and from anything else', () => {
    expect(isAssemblyFile(JSON.stringify(shared))).toBe(true)
    expect(isAssemblyFile(`\uFEFF${JSON.stringify(shared)}`)).toBe(true)
    expect(isAssemblyFile(textOf('samples/garage/project.json'))).toBe(false)
    expect(isAssemblyFile('{"format"')).toBe(false)
  })

  it.each<[string, unknown, string]>([
    ['no JSON', '{"format"', 'This is not readable JSON.'],
    [
      'a project',
      textOf('samples/garage/project.json'),
      'This is JSON, but not a shared assembly: its "format" has to be "leafgap-assembly".',
    ],
    [
      'a newer version',
      { ...shared, version: 2 },
      'This file is version 2 of the format and this Leafgap reads up to 1: open it with a newer one.',
    ],
    ['a strange version', { ...shared, version: 'one' }, '"version" has to be 1, at version'],
    ['nothing in it', { format: 'leafgap-assembly', version: 1 }, '"assembly" is missing, at assembly'],
    [
      'an unknown key',
      { ...shared, sender: 'x' },
      '"sender" is not known to this version of the format, at the top of the file',
    ],
    [
      'an unknown key in a link',
      {
        ...shared,
        assembly: {
          ...anOwnAssembly(),
          layers: [{ kind: 'cavity', depthMm: 50, link: { kind: 'none', spacingMm: 1 } }],
        },
      },
      '"spacingMm" is not known to this version of the format, at assembly.layers[0].link',
    ],
    [
      'impossible layers',
      {
        ...shared,
        assembly: { ...anOwnAssembly(), layers: [{ kind: 'cavity', depthMm: 50, link: { kind: 'none' } }] },
      },
      '"Mixed boards on own studs": Layer 1 (cavity): its link needs a leaf on both sides, and there is no board on its room side, at assembly.layers[0]',
    ],
  ])('is refused with %s', (_, value, message) => {
    expect(said(value)).toEqual([message])
  })
})

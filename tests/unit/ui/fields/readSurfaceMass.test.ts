import { describe, expect, it } from 'vitest'
import { bothMasses, readSurfaceMass } from '#ui/fields/readSurfaceMass.ts'

describe('a typed weight over an area', () => {
  it.each([
    ['10.7', 'mm', 10.7],
    ['10.7 kg/m2', 'ft-in', 10.7],
    ['10.7 kg/m²', 'mm', 10.7],
    ['2.2', 'ft-in', 10.7413],
    ['2.2 lb/ft2', 'mm', 10.7413],
    ['2.2psf', 'mm', 10.7413],
    ['-1', 'mm', -1],
  ] as const)('reads %s in %s', (text, unit, kgM2) => {
    const read = readSurfaceMass(text, unit)
    expect(read.ok && read.value).toBeCloseTo(kgM2, 3)
  })

  it.each(['heavy', '', '10 kg', '1,5'])('refuses "%s" with a sentence', (text) => {
    expect(readSurfaceMass(text, 'mm')).toMatchObject({ ok: false, error: expect.stringContaining('kg/m2 or lb/ft2') })
  })

  it('is shown in both units', () => {
    expect(bothMasses(10.7, 'mm')).toBe('10.7 kg/m² · 2.2 lb/ft²')
    expect(bothMasses(10.7, 'ft-in')).toBe('2.2 lb/ft² · 10.7 kg/m²')
  })
})

import { describe, expect, it } from 'vitest'
import { flatCurve } from '#acoustics/curve.ts'
import { OPENING_KINDS } from '#assemblies/opening.ts'
import { closesForGood } from '#assemblies/openingCautions.ts'
import { OPENING_TYPES } from '#assemblies/openingTypes.ts'
import { inOpening, made, soundOf } from '../../support/openings.ts'
import { CATALOGUE } from '../../support/samples.ts'

const WALL = { lossDb: flatCurve(50), sdDb: flatCurve(6) }

describe('the stock of openings', () => {
  it('has something for every kind of opening, each under an id of its own', () => {
    for (const kind of OPENING_KINDS) expect(OPENING_TYPES.some(({ kinds }) => kinds.includes(kind))).toBe(true)
    expect(CATALOGUE.openingTypes.size).toBe(OPENING_TYPES.length)
  })

  it.each(OPENING_TYPES.map((type) => [type.id, type] as const))('%s says where its figures come from', (_, type) => {
    expect(type.source.text.length).toBeGreaterThan(10)
    if (type.published) expect(type.published.source.text.length).toBeGreaterThan(10)
    if (type.loss.kind === 'contour') expect(type.published).not.toBeNull()
  })

  it.each(OPENING_TYPES.flatMap((type) => type.kinds.map((kind) => [type.id, kind, type] as const)))(
    '%s as a %s is rated within 4 of its published number',
    (id, kind, type) => {
      const sound = soundOf(made(id), inOpening(kind, { wall: WALL }))
      if (!type.published) return expect(sound.publishedWords).toBeNull()
      expect(Math.abs(sound.stc! - type.published.stc)).toBeLessThanOrEqual(4)
      expect(sound.publishedWords).toContain(type.published.source.text)
      return undefined
    },
  )

  it('names only leaves that are there in its pairs', () => {
    for (const { loss } of OPENING_TYPES) {
      if (loss.kind !== 'pair') continue
      for (const leaf of [loss.first, loss.second]) {
        expect(CATALOGUE.openingTypes.get(leaf)?.loss.kind).toMatch(/octaves|contour/)
      }
    }
  })

  it('says of every door that a fire door stays one and that the way out stays clear', () => {
    for (const type of OPENING_TYPES.filter(
      ({ kinds, loss }) => kinds.includes('door') && loss.kind !== 'as-the-wall',
    )) {
      expect(type.cautions.join(' ')).toMatch(/fire door stays a fire door/)
      expect(type.cautions.join(' ')).toMatch(/813 mm/)
    }
  })

  it('says of everything that shuts a window for good that nobody may need it to escape', () => {
    const shutting = OPENING_TYPES.filter((type) => type.kinds.includes('window') && closesForGood(type))
    expect(shutting.length).toBeGreaterThan(5)
    for (const { cautions } of shutting) expect(cautions.join(' ')).toMatch(/Never plug, fill in or fix shut/)
  })

  it('says of a vent that is closed whose air it may be, and of heavy leaves that they need frame and hinges', () => {
    expect(CATALOGUE.openingTypes.get('plug')?.cautions.join(' ')).toMatch(/fuel-burning appliance/)
    expect(CATALOGUE.openingTypes.get('vent-open')?.cautions).toEqual([])
    expect(CATALOGUE.openingTypes.get('door-acoustic-180')?.cautions.join(' ')).toMatch(/frame, hinges/)
    expect(CATALOGUE.openingTypes.get('door-hollow-core')?.cautions.join(' ')).not.toMatch(/hinges/)
  })
})

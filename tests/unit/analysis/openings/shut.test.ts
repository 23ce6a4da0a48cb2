import { describe, expect, it } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import type { Caution } from '#analysis/results.ts'
import type { Opening } from '#analysis/room.ts'
import type { OpeningMade } from '#assemblies/opening.ts'
import { anOpening, made } from '../../../support/openings.ts'
import { aRoom, aScheme, box, resultsOf } from '../../../support/rooms.ts'
import { CATALOGUE } from '../../../support/samples.ts'

function cautionsWith(opening: Opening, chosen?: OpeningMade): readonly Caution[] {
  const room = aRoom(box(0, 0, 4000, 3000), { openings: [opening] })
  const scheme = aScheme({}, chosen ? { openings: { [opening.id]: chosen } } : {})
  const analysed = analyseScheme({ room, scheme, catalogue: CATALOGUE, quality: 'drag' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return analysed.value.cautions.filter(({ code }) => code.startsWith('shut-'))
}

const WINDOW = anOpening({ kind: 'window', name: 'Back window', widthMm: 900, heightMm: 1000, sillMm: 900 })

describe('what a scheme shuts for good', () => {
  it('is life safety where people may have to escape through the window: plugged, filled in or fixed', () => {
    for (const type of ['plug', 'infill', 'window-secondary', 'window-pane-6']) {
      const cautions = cautionsWith(WINDOW, made(type))
      expect(cautions).toHaveLength(1)
      expect(cautions[0]).toMatchObject({ code: 'shut-escape-window', kind: 'life-safety', surfaces: ['wall-1'] })
      expect(cautions[0]!.text).toMatch(/^Back window: this scheme shuts it for good.*must never be plugged/)
    }
  })

  it('is none where the window still opens, is too high to climb through, or stands shut already', () => {
    expect(cautionsWith(WINDOW)).toEqual([])
    expect(cautionsWith(WINDOW, made('window-sash-unit'))).toEqual([])
    expect(cautionsWith({ ...WINDOW, sillMm: 1300 }, made('plug'))).toEqual([])
    expect(cautionsWith({ ...WINDOW, made: made('window-pane-4') }, made('plug'))).toEqual([])
  })

  it('is life safety too where a door is filled in, or a vent closed that something breathes through', () => {
    expect(cautionsWith(anOpening(), made('infill'))[0]).toMatchObject({ code: 'shut-way-out', kind: 'life-safety' })
    expect(cautionsWith(anOpening(), made('pair-solid-core'))).toEqual([])
    const vent = anOpening({ kind: 'vent', name: 'Vent', widthMm: 200, heightMm: 200, sillMm: 2000 })
    expect(cautionsWith(vent, made('plug'))[0]!.text).toMatch(/fuel-burning appliance/)
  })
})

describe('an opening larger than its wall', () => {
  it('is said in a sentence, and leaves the wall no area rather than less than none', () => {
    const tall = anOpening({ name: 'Tall door', fromMm: 0, widthMm: 4000, heightMm: 2600 })
    const result = resultsOf(aRoom(box(0, 0, 4000, 3000), { openings: [tall] }))
    const said = result.openings[0]!.problems.find(({ code }) => code === 'above-ceiling')
    expect(said?.text).toMatch(
      /^Tall door reaches up to 2600 mm .* and Wall 1 is only 2400 mm .* high there: check the opening and the heights\.$/,
    )
    expect(result.surfaces.find(({ id }) => id === 'wall-1')!.soundAreaM2).toBe(0)
    expect(result.cautions.some(({ code }) => code === 'above-ceiling')).toBe(true)
  })

  it('is none where it fills its wall to the ceiling', () => {
    const full = anOpening({ fromMm: 0, widthMm: 4000, heightMm: 2400 })
    const result = resultsOf(aRoom(box(0, 0, 4000, 3000), { openings: [full] }))
    expect(result.openings[0]!.problems.map(({ code }) => code)).not.toContain('above-ceiling')
  })
})

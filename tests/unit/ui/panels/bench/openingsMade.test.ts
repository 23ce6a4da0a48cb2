import { describe, expect, it } from 'vitest'
import { madeWords } from '#assemblies/openingMadeWords.ts'
import { panesOf, sealsFor, typesFor, withSecond, withType } from '#ui/panels/bench/openings/made/choosing.ts'
import { choiceCautions, octaveRows, openingStcWords, sealWords } from '#ui/panels/bench/openings/made/madeWords.ts'
import { anOpening, inOpening, made, soundOf } from '../../../../support/openings.ts'
import { CATALOGUE } from '../../../../support/samples.ts'

const type = (id: string) => CATALOGUE.openingTypes.get(id)!

describe('choosing what fills an opening', () => {
  it('offers only what can stand there, with seals it can have', () => {
    expect(typesFor('vent', CATALOGUE).map(({ id }) => id)).toEqual(['plug', 'infill', 'vent-open', 'vent-duct'])
    expect(sealsFor(type('door-solid-core'), 'door')).toEqual(['good', 'worn', 'undercut'])
    expect(sealsFor(type('door-hardwood-cracks'), 'door')).toEqual(['good', 'undercut'])
    expect(sealsFor(type('window-sash-4'), 'window')).toEqual(['good', 'worn'])
    expect(sealsFor(type('window-pane-4'), 'window')).toEqual([])
  })

  it('keeps seals that the next type can have too, and drops panes and a second door it cannot', () => {
    const door = anOpening()
    expect(withType(made('door-hollow-core', 'worn'), type('door-solid-core'), door)).toEqual({
      type: 'door-solid-core',
      seal: 'worn',
    })
    expect(withType(made('door-solid-core', 'worn'), type('door-hardwood-cracks'), door).seal).toBe('good')
    const second = { type: 'door-metal-filled', seal: 'good' } as const
    const pair = made('door-solid-core', 'good', { second })
    const lobby = anOpening({ lobby: { hinge: 'from', swing: 'in' } })
    expect(withType(pair, type('door-solid-wood'), lobby).second).toEqual(second)
    expect(withType(pair, type('infill'), lobby).second).toBeUndefined()
    expect(withType(pair, type('door-solid-wood'), door).second).toBeUndefined()
  })

  it('names a second door or takes it back to the usual', () => {
    const named = withSecond(made('pair-solid-core'), type('door-metal-hollow'), 'door')
    expect(named.second).toEqual({ type: 'door-metal-hollow', seal: 'good' })
    expect('second' in withSecond(named, null, 'door')).toBe(false)
  })

  it('shows the usual panes until others are chosen', () => {
    expect(panesOf(made('window-pane-pair'), type('window-pane-pair'))?.gapMm).toBe(120)
    expect(panesOf(made('window-pane-4'), type('window-pane-4'))).toBeNull()
  })
})

describe('words for what fills an opening', () => {
  it('say what it is with its seals, or that nobody knows', () => {
    expect(madeWords(null, CATALOGUE)).toBe('not known yet')
    expect(madeWords(made('door-solid-core', 'undercut'), CATALOGUE)).toBe('solid-core, undercut')
    expect(madeWords(made('door-hardwood-cracks'), CATALOGUE)).toBe('hardwood, cracks')
    expect(madeWords(made('plug'), CATALOGUE)).toBe('plug')
    expect(madeWords(made('door-of-gold'), CATALOGUE)).toMatch(/which the catalogue does not have/)
    const second = { type: 'door-metal-filled', seal: 'good' } as const
    expect(madeWords(made('door-solid-core', 'good', { second }), CATALOGUE)).toBe(
      'solid-core + filled metal, seals good',
    )
  })

  it('say of seals only what is so', () => {
    expect(sealWords('good', type('door-hardwood-cracks'))).toBe('As tested, with its usual cracks')
    expect(sealWords('undercut', type('door-solid-core'))).toBe('Cut off above the floor, worn elsewhere')
  })

  it('never give a number without its range, and mark octaves that are assumed', () => {
    const sound = soundOf(made('door-metal-filled'), inOpening('door'))
    expect(openingStcWords(sound)).toBe('STC 43, likely 37-49')
    expect(openingStcWords({ stc: null, likely: null })).toBe('lets through all that meets it')
    const rows = octaveRows(sound, anOpening())
    expect(rows.map(({ hz, isAssumed }) => (isAssumed ? `${hz}?` : hz)).join(' ')).toBe(
      '63? 125 250 500 1000 2000 4000',
    )
    expect(Math.round(rows[3]!.lossDb)).toBe(40)
  })

  it('give the cautions of both doors, each once', () => {
    const pair = made('pair-solid-core', 'good', { second: { type: 'door-acoustic-180', seal: 'good' } })
    const cautions = choiceCautions(pair, CATALOGUE)
    expect(cautions.filter((text) => text.startsWith('A fire door'))).toHaveLength(1)
    expect(cautions.some((text) => text.includes('hinges'))).toBe(true)
  })
})

import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { leaveOneOut, type UnseenPrediction, unseenHalf } from '../tools/anchor/evaluate.ts'
import { ANCHOR_FILE, trainedFile } from '../tools/anchor/train.ts'
import { familyName, isFramedWall } from '../tools/validate/families.ts'
import { physicsError, ratedRows } from '../tools/validate/physics.ts'
import { validationPlot } from '../tools/validate/plot.ts'
import { validationText } from '../tools/validate/report.ts'
import { statisticsOf } from '../tools/validate/statistics.ts'

const errorsOf = (predictions: readonly UnseenPrediction[]) => predictions.map(({ error }) => error)
const framed = ({ group }: UnseenPrediction) => group !== 'masonry'
const physics = ratedRows()

describe('the committed files are what the engine says now', () => {
  it('the correction is trained again to the bit', () => {
    expect(readFileSync(ANCHOR_FILE, 'utf8'), 'run npm run train-anchor').toBe(trainedFile())
  })

  it('the validation is not stale', () => {
    expect(readFileSync('tests/reference/VALIDATION.md', 'utf8'), 'run npm run validate').toBe(validationText())
    expect(readFileSync('tests/reference/validation.svg', 'utf8'), 'run npm run validate').toBe(validationPlot())
  })
})

describe('physics alone', () => {
  it('all framed walls: mean within 1, SD at most 2.5', () => {
    const { n, mean, sd } = statisticsOf(physics.filter(isFramedWall).map(physicsError))
    expect(n).toBe(94)
    expect(Math.abs(mean)).toBeLessThanOrEqual(1)
    expect(sd).toBeLessThanOrEqual(2.5)
  })

  it('joist floors with channel: mean within 1, SD at most 2', () => {
    const floors = physics.filter((row) => familyName(row) === 'joists, channel')
    const { mean, sd } = statisticsOf(floors.map(physicsError))
    expect(Math.abs(mean)).toBeLessThanOrEqual(1)
    expect(sd).toBeLessThanOrEqual(2)
  })
})

describe('anchored, every row predicted without itself', () => {
  it('walls and floors, leave one out: SD within half a decibel of the goal of 1.5, nine of ten within 3', () => {
    const { mean, sd, percentWithin3 } = statisticsOf(errorsOf(leaveOneOut().filter(framed)))
    expect(Math.abs(mean)).toBeLessThanOrEqual(0.5)
    expect(sd).toBeLessThanOrEqual(2)
    expect(percentWithin3).toBeGreaterThanOrEqual(90)
  })

  it('the half nothing was fitted on: mean within 1, SD at most 2, nine of ten within 3; floors SD 2.5', () => {
    const unseen = unseenHalf().filter(framed)
    const { mean, sd, percentWithin3 } = statisticsOf(errorsOf(unseen))
    expect(Math.abs(mean)).toBeLessThanOrEqual(1)
    expect(sd).toBeLessThanOrEqual(2)
    expect(percentWithin3).toBeGreaterThanOrEqual(90)
    expect(statisticsOf(errorsOf(unseen.filter(({ group }) => group === 'floors'))).sd).toBeLessThanOrEqual(2.5)
  })

  it('the stated 95 % range holds at least nine of ten unseen rows, and is never below ±1.96 x 2', () => {
    const unseen = unseenHalf()
    const held = unseen.filter(({ error, sdDb }) => Math.abs(error) <= 1.96 * sdDb)
    expect(held.length / unseen.length).toBeGreaterThanOrEqual(0.9)
    expect(Math.min(...unseen.map(({ sdDb }) => sdDb))).toBeGreaterThanOrEqual(2)
  })
})

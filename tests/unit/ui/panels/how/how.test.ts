import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import type { AnchorNeighbour } from '#acoustics/anchor/correction.ts'
import { BANDS_HZ } from '#acoustics/bands.ts'
import { STC } from '#acoustics/rating.ts'
import type { SurfaceRating } from '#analysis/results.ts'
import { ratingOf } from '#analysis/surfaces.ts'
import type { Layer } from '#assemblies/layer.ts'
import { predictLayers } from '#assemblies/predict.ts'
import type { PublishedValue } from '#assemblies/published/match.ts'
import { curveWords, limitWords } from '#ui/charts/curveWords.ts'
import { BandTable } from '#ui/panels/bench/how/BandTable.tsx'
import {
  anchorWords,
  contourLimitWords,
  percent,
  rangeWords,
  spectrumLimitWords,
} from '#ui/panels/bench/how/howWords.ts'
import { Neighbours } from '#ui/panels/bench/how/Neighbours.tsx'
import { Printed } from '#ui/panels/bench/how/Printed.tsx'
import { RatingTable } from '#ui/panels/bench/how/RatingTable.tsx'
import { printedNote, stcInTable } from '#ui/panels/words.ts'

const BOARD: Layer = { kind: 'board', material: 'gypsum-type-x', thicknessMm: 15.875 }
const WALL: readonly Layer[] = [
  BOARD,
  { kind: 'cavity', depthMm: 88.9, fill: 'mineral-wool', link: { kind: 'wood-stud', spacingMm: 406.4 } },
  BOARD,
]

const PRINTED: PublishedValue = {
  id: 'NBC-W1a',
  description: 'one board each side',
  stc: 36,
  rw: null,
  source: { text: 'Table 9.10.3.1.-A, row W1a', status: 'seen' },
}

/** The wall's own prediction, with an anchor of the test's choosing. */
function rated(
  anchor: { shiftDb: number; isNear: boolean; neighbours?: readonly AnchorNeighbour[] },
  published: readonly PublishedValue[] = [],
): SurfaceRating {
  const predicted = predictLayers(WALL, 'plot')
  if (!predicted.ok) throw new Error('the wall can be predicted')
  const { value } = predicted
  return ratingOf(
    {
      ...value,
      lossDb: value.physicsLossDb.map((loss) => loss + anchor.shiftDb),
      anchor: { sdDb: 2.3, neighbours: [], ...anchor },
      spreadStcDb: 2.3,
    },
    published,
  )
}

const textOf = (element: Parameters<typeof renderToStaticMarkup>[0]) =>
  renderToStaticMarkup(element)
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')

describe('how a rating came about', () => {
  test('names both numbers and the shift between them', () => {
    const near = rated({ shiftDb: 2, isNear: true })
    expect(near.stc - near.physicsStc).toBe(2)
    expect(anchorWords(near)).toBe(
      `Physics ${near.physicsStc}, anchored ${near.stc}: published measurements of similar build-ups move the whole curve by +2.0 dB.`,
    )
    expect(anchorWords(rated({ shiftDb: -1.26, isNear: true }))).toContain('by −1.3 dB')
  })

  test('says where nothing published is near', () => {
    expect(anchorWords(rated({ shiftDb: 0, isNear: false }))).toMatch(
      /^Physics \d+, anchored \d+: no published measurement near this build-up, so it stands as calculated\.$/,
    )
  })

  test('gives the range and how it is made', () => {
    const rating = rated({ shiftDb: 0, isNear: true })
    expect(rangeWords(rating)).toContain(`STC ${rating.stc}, likely ${rating.likely[0]}-${rating.likely[1]}`)
    // 1.96 x 2.3
    expect(rangeWords(rating)).toContain('±4.5')
    expect(rangeWords(rating)).toContain('never taken below 2.0')
  })

  test('names the band that limits, the sum or the single band', () => {
    const { stc, stcNo8dbRule, ctr } = rated({ shiftDb: 0, isNear: true }).evidence
    expect(
      limitWords({ ...stc, limitedBy: 'band', limitingBandHz: 125, shortfalls: stc.shortfalls.map(() => 8) }, STC),
    ).toBe('limited by 125 Hz: 8 dB short of the contour, the most one band may fall short')
    expect(limitWords(stcNo8dbRule, STC)).toMatch(
      /^limited by the sum: all bands together fall \d+ dB short of the contour and 32 dB is the most; \d+ Hz falls shortest$/,
    )
    expect(contourLimitWords(stcNo8dbRule)).toMatch(/^the sum, \d+ dB of at most 32; \d+ Hz falls shortest$/)
    expect(spectrumLimitWords(ctr)).toMatch(/^\d+ Hz lets most through, \d+ %$/)
  })

  test('lists neighbours with likeness, description and source, and an unknown one by its id', () => {
    const neighbours = [
      { id: 'NBC-W1a', stc: 36, likeness: 0.93 },
      { id: 'NOT-THERE', stc: 40, likeness: 0.4 },
    ]
    const text = textOf(createElement(Neighbours, { anchor: { shiftDb: 1, sdDb: 2.3, isNear: true, neighbours } }))
    expect(text).toContain('NBC-W1a: published 36 , likeness 0.93')
    expect(text).toContain(
      '1 x 15.9 mm type X board, single wood stud 38x89 at 400 or 600 mm, boards fixed straight, 89 mm absorber',
    )
    expect(text).toContain('National Building Code')
    expect(text).toContain('NOT-THERE: published 40')
  })

  test('shows a published value with its source and the match rule, or says there is none', () => {
    const some = textOf(createElement(Printed, { published: [PRINTED] }))
    expect(some).toContain('Published 36')
    expect(some).toContain('row W1a; seen')
    expect(some).toContain('What counts as the same build-up')
    expect(textOf(createElement(Printed, { published: [] }))).toContain('No published value for this build-up.')
  })

  test('has every band and every rating in tables', () => {
    const rating = rated({ shiftDb: 0, isNear: true })
    const bands = textOf(createElement(BandTable, { rating }))
    BANDS_HZ.forEach((hz, band) => {
      expect(bands).toContain(` ${hz} ${rating.prediction.lossDb[band]!.toFixed(1)} `)
    })
    const ratings = textOf(createElement(RatingTable, { rating }))
    expect(ratings).toContain(`${rating.stc}, likely ${rating.likely[0]}-${rating.likely[1]}`)
    for (const name of ['STC without the rule', 'Rw', 'C50-5000', 'Ctr,50-5000', 'OITC'])
      expect(ratings).toContain(name)
  })

  test('tells a share of nothing apart from a small one', () => {
    expect([0, 0.001, 0.426].map(percent)).toEqual(['', '<1', '43'])
  })
})

describe('words beside a rating', () => {
  test('carry the published value, with its source beneath a table', () => {
    const rating = rated({ shiftDb: 0, isNear: true }, [PRINTED])
    expect(stcInTable(rating)).toMatch(/^STC \d+, likely \d+-\d+, published 36 \(NBC-W1a\)$/)
    expect(printedNote([rating, rated({ shiftDb: 0, isNear: true }), null])).toBe(
      'Published values: NBC-W1a: Table 9.10.3.1.-A, row W1a; seen. Where none is named: no published value for this build-up.',
    )
    expect(printedNote([rated({ shiftDb: 0, isNear: true })])).toBe('No published value for this build-up.')
    expect(curveWords(rating, 'the wall')).toContain('. Published 36 (Table 9.10.3.1.-A, row W1a; seen)')
  })

  test('tell a curve with its dips and its limit', () => {
    const words = curveWords(rated({ shiftDb: 0, isNear: true }), 'the wall')
    expect(words).toMatch(/^the wall: \d+ dB at 63 Hz, /)
    expect(words).toMatch(/Dips: gap 1 of 89 mm resonates: its air is the spring between leaves 1 and 2, \d+ Hz/)
    expect(words).toMatch(/STC \d+, limited by/)
  })
})

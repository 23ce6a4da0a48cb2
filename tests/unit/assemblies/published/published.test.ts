import { describe, expect, it } from 'vitest'
import type { BoardLayer, CavityLayer, Layer } from '#assemblies/layer.ts'
import { rowWords } from '#assemblies/published/describe.ts'
import { expressRow } from '#assemblies/published/express.ts'
import { publishedFor } from '#assemblies/published/match.ts'
import { publishedRows, sourceOf } from '#assemblies/published/rows.ts'

const rowOf = (id: string) => publishedRows().find((row) => row.id === id)!
const BOARD: BoardLayer = { kind: 'board', material: 'gypsum-type-x', thicknessMm: 15.875 }
const STUDS: CavityLayer = {
  kind: 'cavity',
  depthMm: 88.9,
  fill: 'mineral-wool',
  link: { kind: 'wood-stud', spacingMm: 406.4 },
}

const idsFor = (layers: readonly Layer[]) => publishedFor(layers).map(({ id }) => id)

describe('publishedRows', () => {
  it('are all there, each with a source and an id of its own', () => {
    expect(publishedRows()).toHaveLength(329)
    expect(new Set(publishedRows().map(({ id }) => id)).size).toBe(329)
    for (const row of publishedRows()) expect(sourceOf(row).text.length).toBeGreaterThan(10)
  })

  it('say of a row what it is and where it stands', () => {
    expect(rowWords(rowOf('NBC-W3a'))).toBe(
      '1 x 15.9 mm type X board, single wood stud 38x89 at 400 mm, resilient channel at 400 or 600 mm, 89 mm absorber, 1 x 15.9 mm type X board',
    )
    expect(sourceOf(rowOf('NBC-W3a')).text).toMatch(/Table 9\.10\.3\.1\.-A.*row W3a$/)
  })
})

describe('expressRow', () => {
  it('gives one list of layers for every choice a row leaves open', () => {
    const expressed = expressRow(rowOf('NBC-W3c'))
    expect(expressed.ok && expressed.value).toHaveLength(4)
  })

  it('hangs leaf 1 on the channel, on the room side', () => {
    const expressed = expressRow(rowOf('NBC-W4a'))
    const kinds = expressed.ok && expressed.value[0]!.map(({ kind }) => kind)
    expect(kinds).toEqual(['board', 'cavity', 'board', 'board'])
  })

  it('says why a row cannot be written', () => {
    expect(expressRow(rowOf('NBC-F5a'))).toEqual({
      ok: false,
      error: 'we have no link for "rigid steel furring channel"',
    })
    expect(expressRow(rowOf('NBC-S15a'))).toEqual({
      ok: false,
      error: 'the table does not give the depth of the cavity',
    })
  })

  it('finds every row it can write again', () => {
    for (const row of publishedRows()) {
      const expressed = expressRow(row)
      if (expressed.ok) for (const layers of expressed.value) expect(idsFor(layers)).toContain(row.id)
    }
  })
})

describe('publishedFor', () => {
  it('knows inches for the millimetres of a table', () => {
    expect(idsFor([BOARD, STUDS, BOARD])).toEqual(['NBC-W1a'])
    expect(publishedFor([BOARD, STUDS, BOARD])[0]).toMatchObject({ stc: 36, source: { status: 'seen' } })
  })

  it('is the same from the other side', () => {
    const channel: CavityLayer = {
      ...STUDS,
      depthMm: 102,
      fillMm: 89,
      link: { kind: 'resilient-channel', frame: 'wood-stud', studSpacingMm: 400, channelSpacingMm: 600 },
    }
    expect(idsFor([BOARD, channel, BOARD, BOARD])).toEqual(['NBC-W4a'])
    expect(idsFor([BOARD, BOARD, channel, BOARD])).toEqual(['NBC-W5a'])
  })

  it.each<[string, readonly Layer[]]>([
    ['another board', [{ ...BOARD, material: 'gypsum-regular' }, STUDS, BOARD]],
    ['another thickness', [{ ...BOARD, thicknessMm: 19 }, STUDS, BOARD]],
    ['another spacing', [BOARD, { ...STUDS, link: { kind: 'wood-stud', spacingMm: 300 } }, BOARD]],
    ['a deeper cavity', [BOARD, { ...STUDS, depthMm: 140 }, BOARD]],
    ['a half fill', [BOARD, { ...STUDS, fillMm: 50 }, BOARD]],
    ['a compound', [BOARD, STUDS, BOARD, { kind: 'damping-compound' }, BOARD]],
    ['a third leaf', [BOARD, STUDS, BOARD, STUDS, BOARD]],
  ])('does not take %s for the same', (_, layers) => {
    expect(idsFor(layers)).toEqual([])
  })
})

import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { Ledger } from '#ui/panels/Ledger.tsx'
import { projectResult, startsAnew } from '#ui/panels/ledger/useLedger.ts'
import { type Session, SessionContext } from '#ui/session.ts'
import { sampleProject, sessionOn } from './samples.ts'

function ledgerText(session: Session): string {
  const html = renderToStaticMarkup(createElement(SessionContext, { value: session }, createElement(Ledger)))
  return html
    .replace(/<[^>]+>/g, ' ')
    .replace(/&quot;/g, '"')
    .replace(/&#x27;/g, "'")
    .replace(/\s+/g, ' ')
}

describe('the ledger of the garage under B clips', () => {
  const session = sessionOn(sampleProject('garage'), 'B clips')
  const text = ledgerText(session)

  test('says the floor kept in both units, what is lost and the share', () => {
    expect(text).toContain('93.7 % 224.9 ft² 20.89 m² of 240.0 ft² · lost 15.1 ft²')
  })

  test('gives the lowest rated surface its range and says what is not in it, where nobody must not hear it', () => {
    const text = ledgerText(sessionOn({ ...sampleProject('garage'), receivers: [], sources: [] }, 'B clips'))
    expect(text).toMatch(/STC \d+, likely \d+-\d+/)
    expect(text).toContain('doors, windows, leaks, ventilation and flanking are not in this figure')
    // With its source where there is one.
    expect(text).toMatch(
      /No published value for any of these build-ups\.|Published values: .+; (seen|from memory, not read)/,
    )
    expect(text.replaceAll(/STC \d+, likely/g, '')).not.toMatch(/STC \d/)
  })

  test('says of the floor on soil that it is not rated, never 0', () => {
    expect(text).toContain('Floor not rated')
    expect(text).not.toContain('STC 0')
  })

  test('tells every life-safety caution in full', () => {
    const { roomId, schemeId } = session.view.getState()
    const result = projectResult(session.results, session.document.store.getState().project, roomId, schemeId)
    expect(result!.cautions.length).toBeGreaterThan(3)
    for (const caution of result!.cautions) expect(text).toContain(caution.text)
  })
})

test('a room without an outline is refused in words, without numbers', () => {
  const project = sampleProject('garage')
  const room = { ...project.rooms[0]!, corners: [], walls: [], openings: [] }
  const text = ledgerText(sessionOn({ ...project, rooms: [room] }, 'B clips'))
  expect(text).toContain('fewer than three different corners')
  expect(text).not.toContain('Floor kept')
})

test('where the linings meet it says so first, and no height or volume is left', () => {
  const project = sampleProject('garage')
  const [room] = project.rooms
  const corners = room!.corners.map(({ xMm, ...corner }) => ({ ...corner, xMm: xMm / 20 }))
  const rooms = [{ ...room!, corners, openings: [], obstacles: [], drops: [] }]
  const text = ledgerText(sessionOn({ ...project, rooms }, 'C independent room'))
  expect(text).toMatch(/Floor kept 0\.0 % 0\.0 ft² the linings meet: no clear floor is left/)
  expect(text).toMatch(/Lowest clear height none of/)
  expect(text).toMatch(/Volume kept none of/)
})

test('another room on the page is no change of the former one', () => {
  for (const label of ['start a new room', 'start from width and length', 'open x.json', 'draw the outline']) {
    expect(startsAnew(label)).toBe(true)
  }
  expect(startsAnew('move wall')).toBe(false)
})

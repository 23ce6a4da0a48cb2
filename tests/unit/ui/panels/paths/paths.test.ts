import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { marginWords } from '#analysis/paths/answerWords.ts'
import { projectAnswers } from '#state/answers.ts'
import { Compare } from '#ui/panels/bench/Compare.tsx'
import { PathsView } from '#ui/panels/bench/paths/PathsView.tsx'
import { placeOf } from '#ui/panels/bench/paths/useShowPath.ts'
import { Ledger } from '#ui/panels/Ledger.tsx'
import { projectResult } from '#ui/panels/ledger/useLedger.ts'
import { type Session, SessionContext } from '#ui/session.ts'
import { invariant } from '#units/result.ts'
import { sampleProject, sessionOn } from '../samples.ts'
import { heardGarage } from './heard.ts'

function textOf(session: Session, view: typeof PathsView): string {
  return renderToStaticMarkup(createElement(SessionContext, { value: session }, createElement(view)))
    .replace(/<[^>]+>/g, ' ')
    .replace(/&quot;/g, '"')
    .replace(/&#x27;/g, "'")
    .replace(/\s+/g, ' ')
}

function answerOn(session: Session) {
  const { project } = session.document.store.getState()
  const { roomId, schemeId } = session.view.getState()
  const result = projectResult(session.results, project, roomId, schemeId)
  const [room, scheme] = [project.rooms[0], project.schemes.find(({ id }) => id === schemeId)]
  invariant(result && room && scheme, 'the scheme can be worked out')
  const [answer] = projectAnswers(project, room, scheme, result)
  invariant(answer, 'the room has a receiver')
  return answer
}

describe('a garage that a neighbour must not hear', () => {
  const session = sessionOn(heardGarage(), 'B clips')
  const answer = answerOn(session)

  test('the ledger says for whom, how much, how sure, and by which way', () => {
    const text = textOf(session, Ledger)
    expect(text).toContain(`Quiet for Bedroom window ${marginWords(answer.marginDb)} ${answer.verdictWords}`)
    expect(text).toMatch(/likely [−+]?\d+ to [−+]?\d+ dB · (tightest|most of it) at \d+ Hz/)
    expect(text).toContain('Weakest path')
    expect(text).toContain(answer.paths[0]!.path.label)
    expect(text).toContain('Structure-borne sound and bass below 50 Hz are not in this figure')
    expect(text).toMatch(/lowest resonance of the build-ups: \d+ Hz/)
    expect(text).not.toContain('Quiet, lowest rated surface')
  })

  test('the ledger adds what somebody who plays there must read', () => {
    expect(textOf(session, Ledger)).toMatch(/hearing protection/i)
  })

  test('the paths stand with every share, and the shares are of everything', () => {
    const text = textOf(session, PathsView)
    expect(text).toContain(answer.sentence)
    for (const { path } of answer.paths) expect(text).toContain(path.label)
    for (const { text: note } of answer.notes) expect(text).toContain(note)
    expect(answer.paths.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
  })

  test('every octave of the level is in a table', () => {
    const text = textOf(session, PathsView)
    for (const hz of [63, 125, 250, 500, 1000, 2000, 4000]) expect(text).toMatch(new RegExp(`\\b${hz} \\d+ dB`))
  })

  test('the comparison has a row for the receiver, with its range under every scheme', () => {
    const text = textOf(session, Compare)
    expect(text).toContain('Margin at every receiver, with its likely range')
    expect(text.match(/[−+]?\d+ dB, likely/g)?.length).toBe(session.document.store.getState().project.schemes.length)
  })
})

test('a door nobody has described is not known, and the ledger says which and where to say it', () => {
  const heard = heardGarage()
  const [room] = heard.rooms
  const openings = room!.openings.map(({ made: _, ...opening }) => opening)
  const session = sessionOn({ ...heard, rooms: [{ ...room!, openings }] }, 'B clips')
  const { unknown } = answerOn(session)
  expect(unknown.length).toBeGreaterThan(0)
  const ledger = textOf(session, Ledger)
  expect(ledger).toMatch(/Quiet for Bedroom window \+ Not known|Quiet for Bedroom window Not known/)
  const paths = textOf(session, PathsView)
  for (const { label, why } of unknown) {
    expect(ledger).toContain(why)
    expect(paths).toContain(label)
    expect(paths).toContain(why)
  }
  // Nothing stands for what is not known.
  expect(ledger).not.toMatch(/Quiet for Bedroom window[^.]*\d dB/)
  expect(ledger).not.toContain('Weakest path')
})

test('without a target the ledger is as before and leads to one', () => {
  const session = sessionOn(sampleWithoutTargets(), 'B clips')
  expect(textOf(session, Ledger)).toContain('Quiet, lowest rated surface')
  expect(textOf(session, Ledger)).toContain('Set who must not hear it')
  expect(textOf(session, PathsView)).toContain('Nobody is named yet who must not hear it')
})

function sampleWithoutTargets() {
  return { ...sampleProject('garage'), receivers: [], sources: [] }
}

test('a path leads to what would have to be changed', () => {
  expect(placeOf({ id: 'wall-1', kind: 'surface', element: 'wall-1' })).toMatchObject({ surfaceIds: ['wall-1'] })
  const door = { thing: { kind: 'opening', id: 'door-1' } }
  expect(placeOf({ id: 'seal:door-1', kind: 'leak', element: 'door-1' })).toMatchObject(door)
  expect(placeOf({ id: 'leak:wall-1', kind: 'leak', element: 'wall-1' })).toMatchObject({ roomView: 'air' })
})

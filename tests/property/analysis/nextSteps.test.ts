import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { type AnswerInput, answerReceivers } from '#analysis/paths/answerReceivers.ts'
import { marginWith } from '#analysis/paths/next/margins.ts'
import { type NextStep, nextSteps } from '#analysis/paths/nextSteps.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Opening, Room } from '#analysis/room.ts'
import { AIRTIGHTNESS, type Scheme, withChange } from '#analysis/scheme.ts'
import { JUNCTION_CLASSES, type Limit, type Receiver, type ReceiverPlace } from '#analysis/target.ts'
import { SEAL_CONDITIONS } from '#assemblies/opening.ts'
import { aReceiver, aSource } from '../../support/paths.ts'
import { aRoom, aScheme, box } from '../../support/rooms.ts'
import { CATALOGUE, openSample } from '../../support/samples.ts'

const RUNS = { numRuns: 25 }
const [DOOR] = openSample('garage').rooms[0]!.openings.filter(({ kind }) => kind === 'door')
const WALLS = ['wall-1', 'wall-2', 'wall-3', 'wall-4'] as const

const anyRoom: fc.Arbitrary<Room> = fc
  .record({
    widthMm: fc.integer({ min: 3500, max: 8000 }),
    lengthMm: fc.integer({ min: 3500, max: 8000 }),
    existing: fc.constantFrom('stud-2x4-osb-siding', 'brick-215', 'concrete-150'),
    door: fc.constantFrom(
      ...[...CATALOGUE.openingTypes.values()].filter(({ kinds }) => kinds.includes('door')).map(({ id }) => id),
    ),
    seal: fc.constantFrom(...SEAL_CONDITIONS),
  })
  .map(({ widthMm, lengthMm, existing, door, seal }) => {
    const bare = aRoom(box(0, 0, widthMm, lengthMm))
    const opening: Opening = { ...DOOR!, id: 'door', wall: 'wall-1', fromMm: 1000, made: { type: door, seal } }
    return { ...bare, walls: bare.walls.map((wall) => ({ ...wall, existing })), openings: [opening] }
  })

const anyScheme: fc.Arbitrary<Scheme> = fc
  .record({
    walls: fc.tuple(...WALLS.map(() => fc.constantFrom('as-is', 'W14', 'W16'))),
    airtightness: fc.constantFrom(...AIRTIGHTNESS),
  })
  .map(({ walls, airtightness }) =>
    aScheme(Object.fromEntries(WALLS.map((id, k) => [id, walls[k]!])), { airtightness }),
  )

const anyLimit: fc.Arbitrary<Limit> = fc.constantFrom<Limit>(
  { kind: 'NC', index: 20 },
  { kind: 'NR', index: 30 },
  { kind: 'dBA', levelDb: 30 },
  { kind: 'dBC', levelDb: 50 },
)

const anyPlace: fc.Arbitrary<ReceiverPlace> = fc.constantFrom<ReceiverPlace>(
  { kind: 'room', volumeM3: 40, furnishing: 'furnished', absorptionM2: null },
  { kind: 'outdoors', distanceMm: 9000, atFacade: false },
  { kind: 'this-room' },
)

/** The room itself, through all of its walls. */
const INSIDE: Partial<Receiver> = { place: { kind: 'this-room' }, through: WALLS.map((surface) => ({ surface })) }

const anyReceiver: fc.Arbitrary<Receiver> = fc
  .record({
    place: anyPlace,
    limit: anyLimit,
    through: fc.subarray(['wall-1', 'wall-2', 'ceiling-1'], { minLength: 1 }),
    junction: fc.constantFrom(...JUNCTION_CLASSES),
  })
  .map(({ through, ...rest }) => aReceiver({ ...rest, through: through.map((surface) => ({ surface })) }))

const anyInput: fc.Arbitrary<AnswerInput> = fc
  .record({ room: anyRoom, scheme: anyScheme, receiver: anyReceiver })
  .map(({ room, scheme, receiver }) => {
    const place = receiver.place.kind === 'this-room' ? 'facade' : 'room-average'
    return {
      room,
      scheme,
      result: resultsOf(room, scheme),
      sources: [aSource({ place, sdDb: 3 })],
      receivers: [receiver],
      catalogue: CATALOGUE,
    }
  })

function resultsOf(room: Room, scheme: Scheme): SchemeResult {
  const analysed = analyseScheme({ room, scheme, catalogue: CATALOGUE, quality: 'plot' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return analysed.value
}

function changedBy(input: AnswerInput, { change }: Pick<NextStep, 'change'>) {
  const scheme = withChange(input.scheme, change)
  const result = resultsOf(input.room, scheme)
  return { result, answer: answerReceivers({ ...input, scheme, result })[0]! }
}

/** What of the sound goes by paths that are not the same afterwards: at the deciding octave, or of a weighted level overall. */
function shareChanged(before: ReceiverAnswer, then: ReceiverAnswer): number {
  const same = new Map(then.paths.map(({ path }) => [path.id, JSON.stringify([path.areaM2, path.lossDb])]))
  return before.paths
    .filter(({ path }) => same.get(path.id) !== JSON.stringify([path.areaM2, path.lossDb]))
    .reduce((sum, one) => sum + (before.worstBandHz === null ? one.share : one.shareAtWorstBand), 0)
}

describe('next steps', () => {
  test('gain no more than closing what they change altogether', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const before = answerReceivers(input)[0]!
        for (const step of nextSteps(input, 'receiver-1')) {
          const { answer, result } = changedBy(input, step)
          const isSelf = input.receivers[0]!.place.kind === 'this-room'
          // The room itself hears less in a larger volume, whatever comes in.
          const roomier = isSelf
            ? 10 * Math.log10(result.ledger.volumeM3.clear / input.result.ledger.volumeM3.clear)
            : 0
          const share = Math.min(1, shareChanged(before, answer))
          expect(step.gainDb).toBeLessThanOrEqual(-10 * Math.log10(1 - share) + Math.max(0, roomier) + 0.01)
        }
      }),
      RUNS,
    )
  })

  test('gain what they say, each at least 0.1 dB and none for the worse, the best first', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const before = answerReceivers(input)[0]!
        const steps = nextSteps(input, 'receiver-1')
        steps.forEach((step, k) => {
          const { answer } = changedBy(input, step)
          expect(answer.marginDb! - before.marginDb!).toBeCloseTo(step.gainDb, 6)
          expect(answer.marginLow95Db! - before.marginLow95Db!).toBeCloseTo(step.gainLow95Db, 6)
          expect(Math.max(step.gainDb, step.gainLow95Db)).toBeGreaterThanOrEqual(0.1)
          expect(Math.min(step.gainDb, step.gainLow95Db)).toBeGreaterThanOrEqual(0)
          expect(step.gainLow95Db).toBeLessThanOrEqual(steps[k - 1]?.gainLow95Db ?? Number.POSITIVE_INFINITY)
        })
      }),
      RUNS,
    )
  })

  test('weaken a path, and do not only make the room larger that swallows the sound', () => {
    fc.assert(
      fc.property(anyInput, (one) => {
        const input = { ...one, sources: [aSource({ place: 'facade' })], receivers: [aReceiver(INSIDE)] }
        const before = answerReceivers(input)[0]!
        for (const step of nextSteps(input, 'receiver-1')) {
          const { result } = changedBy(input, step)
          const sameRoom = { ...result, ledger: input.result.ledger }
          const scheme = withChange(input.scheme, step.change)
          const after = answerReceivers({ ...input, scheme, result: sameRoom })[0]!
          const gains = [after.marginDb! - before.marginDb!, after.marginLow95Db! - before.marginLow95Db!]
          expect(Math.max(...gains)).toBeGreaterThanOrEqual(0.05)
        }
      }),
      RUNS,
    )
  })

  test('are tried quickly to within 0.02 dB of the plan cut anew', () => {
    fc.assert(
      fc.property(
        anyInput,
        fc.constantFrom('W14', 'W16', 'as-is'),
        fc.constantFrom(...WALLS),
        (input, assembly, wall) => {
          const change = { choices: { [wall]: { assembly, removeLining: false } } }
          const quick = marginWith(input, input.receivers[0]!, change)!
          const { answer } = changedBy(input, { change })
          expect(Math.abs(quick.middle - answer.marginDb!)).toBeLessThan(0.02)
          expect(Math.abs(quick.low - answer.marginLow95Db!)).toBeLessThan(0.02)
          expect(Math.abs(quick.high - answer.marginHigh95Db!)).toBeLessThan(0.02)
        },
      ),
      RUNS,
    )
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BANDS_HZ, type BandCurve, octaveValues } from '#acoustics/bands.ts'
import type { Path } from '#analysis/paths/answer.ts'
import { noiseReduction, type PathEnergy, pathEnergy } from '#analysis/paths/energies.ts'
import type { Hearing } from '#analysis/paths/hearing.ts'
import { type Judged, judgedLimit } from '#analysis/paths/limits.ts'
import { type Margin, marginOf, type Playing } from '#analysis/paths/margin.ts'
import { pathShares } from '#analysis/paths/shares.ts'
import { JUNCTION_CLASSES, type Limit } from '#analysis/target.ts'
import { answerTo, aPath, aReceiver } from '../../support/paths.ts'
import { aRoom } from '../../support/rooms.ts'

const RUNS = { numRuns: 200 }
const FEW = { numRuns: 40 }
/** What is left over when sums of some ten terms are taken in another order. */
const ROUNDING = 1e-9

const decibels = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const curve = (min: number, max: number): fc.Arbitrary<BandCurve> =>
  fc.array(decibels(min, max), { minLength: BANDS_HZ.length, maxLength: BANDS_HZ.length })

const anyPath: fc.Arbitrary<Path> = fc
  .record({
    areaM2: fc.double({ min: 0.0001, max: 40, noNaN: true }),
    lossDb: curve(0, 80),
    sdDb: curve(0, 6),
    distanceMm: fc.double({ min: 100, max: 1e5, noNaN: true }),
    screenedDb: decibels(0, 20),
  })
  .map(aPath)

const anyPaths = fc.array(anyPath, { minLength: 1, maxLength: 8 })

const anyHearing: fc.Arbitrary<Hearing> = fc.oneof(
  fc.record({ kind: fc.constant('room' as const), absorptionM2: fc.double({ min: 0.5, max: 200, noNaN: true }) }),
  fc.record({ kind: fc.constant('outdoors' as const), reflectedDb: fc.constantFrom(0, 3) }),
)

const anyPlaying: fc.Arbitrary<Playing> = fc
  .record({
    levelsDb: fc.array(fc.option(decibels(20, 120), { freq: 4 }), { minLength: 7, maxLength: 7 }),
    sdDb: decibels(0, 8),
  })
  .filter(({ levelsDb }) => levelsDb.some((level) => level !== null))

const anyLimit: fc.Arbitrary<Limit> = fc.oneof(
  fc.record({ kind: fc.constantFrom('NC' as const, 'NR' as const), index: fc.integer({ min: 0, max: 80 }) }),
  fc.record({ kind: fc.constantFrom('dBA' as const, 'dBC' as const), levelDb: decibels(0, 120) }),
)

const anyJudged: fc.Arbitrary<Judged> = fc
  .record({ limit: anyLimit, hasBeat: fc.boolean() })
  .map((change) => judgedLimit(aReceiver(change)))

/** One receiver: what reaches it, what is played and what must not be passed. */
const anyCase = fc.record({ paths: anyPaths, hearing: anyHearing, playing: anyPlaying, judged: anyJudged })

interface Case {
  readonly paths: readonly Path[]
  readonly hearing: Hearing
  readonly playing: Playing
  readonly judged: Judged
}

function energiesOf({ paths, hearing }: Case): readonly PathEnergy[] {
  return paths.map((path) => pathEnergy(path, hearing))
}

function marginIn(one: Case): Margin {
  return marginOf(energiesOf(one), one.playing, one.judged)
}

function sharesIn(one: Case) {
  const energies = energiesOf(one)
  const reached = marginOf(energies, one.playing, one.judged)
  return pathShares({ energies, playing: one.playing, judged: one.judged, reached, margin: reached })
}

/** A path that lets less through: more loss in some bands, the same spread. */
function better(path: Path, byDb: readonly number[]): Path {
  return { ...path, lossDb: path.lossDb.map((loss, band) => loss + byDb[band]!) }
}

const anyGain = fc.array(fc.oneof(fc.constant(0), decibels(0, 40)), { minLength: 21, maxLength: 21 })
const pick = fc.nat(7)

describe('the sum of paths', () => {
  it('never has more noise reduction for one path more', () => {
    fc.assert(
      fc.property(anyCase, anyPath, (one, added) => {
        const before = noiseReduction(energiesOf(one))
        const after = noiseReduction(energiesOf({ ...one, paths: [...one.paths, added] }))
        for (const [band, value] of after.entries()) expect(value).toBeLessThanOrEqual(before[band]! + ROUNDING)
      }),
      RUNS,
    )
  })

  it('never has a wider margin for one path more, nor a higher lower end', () => {
    fc.assert(
      fc.property(anyCase, anyPath, (one, added) => {
        const before = marginIn(one)
        const after = marginIn({ ...one, paths: [...one.paths, added] })
        expect(after.middle).toBeLessThanOrEqual(before.middle + ROUNDING)
        expect(after.low).toBeLessThanOrEqual(before.low + ROUNDING)
      }),
      RUNS,
    )
  })

  it('lies between its best and its worst path alone, each over the area of all', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const room: Hearing = { kind: 'room', absorptionM2: 10 }
        const areaM2 = one.paths.reduce((sum, path) => sum + path.areaM2, 0)
        const alone = one.paths.map((path) => noiseReduction([pathEnergy({ ...path, areaM2 }, room)]))
        noiseReduction(energiesOf({ ...one, hearing: room })).forEach((value, band) => {
          const each = alone.map((loss) => loss[band]!)
          expect(value).toBeGreaterThanOrEqual(Math.min(...each) - ROUNDING)
          expect(value).toBeLessThanOrEqual(Math.max(...each) + ROUNDING)
        })
      }),
      RUNS,
    )
  })
})

describe('improving a path', () => {
  it('never lowers the margin nor its lower end', () => {
    fc.assert(
      fc.property(anyCase, pick, anyGain, (one, at, byDb) => {
        const which = at % one.paths.length
        const paths = one.paths.map((path, k) => (k === which ? better(path, byDb) : path))
        const before = marginIn(one)
        const after = marginIn({ ...one, paths })
        expect(after.middle).toBeGreaterThanOrEqual(before.middle - ROUNDING)
        expect(after.low).toBeGreaterThanOrEqual(before.low - ROUNDING)
      }),
      RUNS,
    )
  })

  /**
   * What decides is the tightest octave of a curve, or the one weighted level; a path that carries the share s of it leaves
   * 1 - s when it is closed altogether, so the margin gains -10 lg(1 - s) at the most, and less where another octave then
   * decides or the path is not closed altogether. The lower end has no such bound: a doubtful path takes its doubt along.
   */
  it('gains no more than -10 lg(1 - its share) of what decides', () => {
    fc.assert(
      fc.property(anyCase, pick, anyGain, (one, at, byDb) => {
        const which = at % one.paths.length
        const energies = energiesOf(one)
        const path = energies[which]!.path
        const share = sharesIn(one).find((candidate) => candidate.path === path)!
        const decisive = one.judged.kind === 'overall' ? share.share : share.shareAtWorstBand
        const paths = one.paths.map((other, k) => (k === which ? better(other, byDb) : other))
        const gain = marginIn({ ...one, paths }).middle - marginIn(one).middle
        // Where 1 - s is as small as rounding, its logarithm is not worth comparing with.
        fc.pre(decisive < 1 - 1e-6)
        expect(gain).toBeLessThanOrEqual(-10 * Math.log10(1 - decisive) + 1e-6)
      }),
      RUNS,
    )
  })

  it('by closing it altogether gains what is said beside it, and no more than that bound', () => {
    fc.assert(
      fc.property(anyCase, pick, (one, at) => {
        fc.pre(one.paths.length > 1)
        const which = at % one.paths.length
        const without = marginIn({ ...one, paths: one.paths.filter((_, k) => k !== which) })
        const shares = sharesIn(one)
        const closed = shares.find(({ path }) => path === one.paths[which])!
        const gain = closed.gainIfClosedDb!
        expect(gain).toBeGreaterThanOrEqual(-ROUNDING)
        expect(gain).toBeCloseTo(Math.min(60, without.middle - marginIn(one).middle), 9)
        const decisive = one.judged.kind === 'overall' ? closed.share : closed.shareAtWorstBand
        if (decisive < 1 - 1e-6) expect(gain).toBeLessThanOrEqual(-10 * Math.log10(1 - decisive) + 1e-6)
      }),
      RUNS,
    )
  })
})

describe('two equal halves of a path', () => {
  it('change nothing: margin, both ends and shares stay', () => {
    fc.assert(
      fc.property(anyCase, pick, (one, at) => {
        const which = at % one.paths.length
        const half = (path: Path): Path => ({ ...path, areaM2: path.areaM2 / 2 })
        const paths = one.paths.flatMap((path, k) => (k === which ? [half(path), half(path)] : [path]))
        const before = marginIn(one)
        const after = marginIn({ ...one, paths })
        for (const end of ['middle', 'low', 'high'] as const) expect(after[end]).toBeCloseTo(before[end], 9)
        const whole = sharesIn(one).find(({ path }) => path === one.paths[which])!
        const halves = sharesIn({ ...one, paths }).filter(({ path }) =>
          [which, which + 1].includes(paths.indexOf(path)),
        )
        const sum = halves.reduce((total, { share }) => total + share, 0)
        expect(halves).toHaveLength(2)
        expect(sum).toBeCloseTo(whole.share, 9)
      }),
      RUNS,
    )
  })
})

describe('shares', () => {
  it('sum to 1, over everything and at the octave that decides', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const shares = sharesIn(one)
        expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
        expect(shares.reduce((sum, { shareAtWorstBand }) => sum + shareAtWorstBand, 0)).toBeCloseTo(1, 9)
        for (const { share, shareAtWorstBand } of shares) {
          expect(share).toBeGreaterThanOrEqual(0)
          expect(shareAtWorstBand).toBeGreaterThanOrEqual(0)
        }
      }),
      RUNS,
    )
  })
})

describe('the likely range of a margin', () => {
  it('holds its middle, and is wider for a source that is less sure', () => {
    fc.assert(
      fc.property(anyCase, decibels(0, 5), (one, moreDb) => {
        const { middle, low, high } = marginIn(one)
        expect(low).toBeLessThanOrEqual(middle + ROUNDING)
        expect(high).toBeGreaterThanOrEqual(middle - ROUNDING)
        const wider = marginIn({ ...one, playing: { ...one.playing, sdDb: one.playing.sdDb + moreDb } })
        expect(wider.low).toBeLessThanOrEqual(low + ROUNDING)
        expect(wider.high).toBeGreaterThanOrEqual(high - ROUNDING)
      }),
      RUNS,
    )
  })
})

/** The same laws of a room with leaks, allowances and limits, where one surface is in several paths. */
describe('a room as a whole', () => {
  const surfaces = ['wall-1', 'wall-2', 'wall-3', 'wall-4', 'ceiling-1']
  const anyRoom = fc.record({
    curves: fc.array(curve(5, 90), { minLength: surfaces.length, maxLength: surfaces.length }),
    sds: fc.array(curve(0, 5), { minLength: surfaces.length, maxLength: surfaces.length }),
    through: fc.subarray(surfaces, { minLength: 1 }),
    junction: fc.constantFrom(...JUNCTION_CLASSES),
    airtightness: fc.constantFrom('sealed' as const, 'ordinary' as const, 'poor' as const),
    limit: anyLimit,
    levels: fc.array(decibels(40, 120), { minLength: 7, maxLength: 7 }),
    sdDb: decibels(0, 6),
  })
  type AnyRoom = typeof anyRoom extends fc.Arbitrary<infer One> ? One : never

  function ask(one: AnyRoom, curves: readonly BandCurve[]) {
    return answerTo({
      scheme: { id: 'scheme-1', name: 'A', choices: {}, airtightness: one.airtightness },
      given: Object.fromEntries(surfaces.map((id, k) => [id, { lossDb: curves[k]!, sdDb: one.sds[k]! }])),
      source: { levelsDb: octaveValues(one.levels), sdDb: one.sdDb },
      receiver: {
        through: one.through.map((surface) => ({ surface })),
        junction: one.junction,
        limit: one.limit,
      },
    })
  }

  it('never has a smaller margin, nor a lower lower end, for a better surface', () => {
    fc.assert(
      fc.property(anyRoom, pick, anyGain, (one, at, byDb) => {
        const which = at % surfaces.length
        const before = ask(one, one.curves)
        const after = ask(
          one,
          one.curves.map((loss, k) => (k === which ? loss.map((value, band) => value + byDb[band]!) : loss)),
        )
        expect(after.marginDb!).toBeGreaterThanOrEqual(before.marginDb! - ROUNDING)
        expect(after.marginLow95Db!).toBeGreaterThanOrEqual(before.marginLow95Db! - ROUNDING)
      }),
      FEW,
    )
  })

  it('gains no more from one element than what all its paths together carry of what decides', () => {
    fc.assert(
      fc.property(anyRoom, pick, anyGain, (one, at, byDb) => {
        const which = at % surfaces.length
        const before = ask(one, one.curves)
        const after = ask(
          one,
          one.curves.map((loss, k) => (k === which ? loss.map((value, band) => value + byDb[band]!) : loss)),
        )
        const overall = before.limitOverallDb !== null
        const carried = before.paths
          .filter(({ path }) => path.element === surfaces[which])
          .reduce((sum, { share, shareAtWorstBand }) => sum + (overall ? share : shareAtWorstBand), 0)
        fc.pre(carried < 1 - 1e-6)
        expect(after.marginDb! - before.marginDb!).toBeLessThanOrEqual(-10 * Math.log10(1 - carried) + 1e-6)
      }),
      FEW,
    )
  })

  it('is the same with a wall drawn as two halves, but for the longer joint round them', () => {
    const halves = aRoom([
      [0, 0],
      [2500, 0],
      [5000, 0],
      [5000, 4000],
      [0, 4000],
    ])
    fc.assert(
      fc.property(
        curve(5, 90),
        curve(0, 5),
        fc.constantFrom(...JUNCTION_CLASSES),
        anyLimit,
        (lossDb, sdDb, junction, limit) => {
          const one = answerTo({ given: { 'wall-1': { lossDb, sdDb } }, receiver: { junction, limit } })
          const two = answerTo({
            room: halves,
            given: { 'wall-1': { lossDb, sdDb }, 'wall-2': { lossDb, sdDb } },
            receiver: { junction, limit, through: [{ surface: 'wall-1' }, { surface: 'wall-2' }] },
          })
          expect(two.marginDb!).toBeCloseTo(one.marginDb!, 9)
          expect(two.marginLow95Db!).toBeCloseTo(one.marginLow95Db!, 9)
          expect(two.nic).toBe(one.nic)
          const share = (answer: typeof one, kind: string) =>
            answer.paths.filter(({ path }) => path.kind === kind).reduce((sum, path) => sum + path.share, 0)
          expect(share(two, 'surface')).toBeCloseTo(share(one, 'surface'), 9)
        },
      ),
      FEW,
    )
  })
})

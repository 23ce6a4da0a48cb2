import { describe, expect, test } from 'vitest'
import { OCTAVE_KEYS, octaveList, octaveValues } from '#acoustics/bands.ts'
import { analyseScheme } from '#analysis/analyse.ts'
import { type AnswerInput, answerReceivers } from '#analysis/paths/answerReceivers.ts'
import { type MeasuredComparison, measuredAgainst } from '#analysis/paths/measuredAgainst.ts'
import type { Opening } from '#analysis/room.ts'
import { JUNCTION_CLASSES, type JunctionClass, type Measured, type Receiver } from '#analysis/target.ts'
import { type Asked, anInput, HALL } from '../../../support/paths.ts'
import { aScheme } from '../../../support/rooms.ts'
import { openSample } from '../../../support/samples.ts'

/** One good wall built, with nothing counted round it. */
const BUILT: Asked = { scheme: aScheme({ 'wall-1': 'W14' }) }

function plotted(asked: Asked): AnswerInput {
  const input = anInput(asked)
  const analysed = analyseScheme({ ...input, quality: 'plot' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return { ...input, result: analysed.value }
}

function compared(when: Measured['when'], differenceDb: readonly (number | null)[], asked: Asked = BUILT) {
  const measured: Measured = { id: 'm', when, name: 'Visit', differenceDb: octaveValues(differenceDb) }
  const input = plotted({ ...asked, receiver: { ...asked.receiver, measured: [measured] } })
  const receiver: Receiver = input.receivers[0]!
  const [answer] = answerReceivers(input)
  const [comparison] = measuredAgainst(input, receiver, answer!)
  return comparison!
}

/** What is predicted for the room as it stands with a junction, dB by octave. */
function asItStands(junction: JunctionClass, asked: Asked = {}): readonly number[] {
  const input = plotted({ ...asked, scheme: aScheme(), receiver: { ...asked.receiver, junction } })
  return octaveList(answerReceivers(input)[0]!.differenceDb).map((difference) => difference!)
}

const off = ({ octaves }: MeasuredComparison) => octaves.map(({ measuredLessPredictedDb }) => measuredLessPredictedDb)

describe('what was measured beside what is predicted', () => {
  test('is compared octave by octave, the measured less the predicted', () => {
    const predicted = asItStands('none')
    const comparison = compared(
      'before',
      predicted.map((difference) => difference + 2),
    )
    expect(comparison.against).toBe('as-it-stands')
    for (const each of off(comparison)) expect(each).toBeCloseTo(2, 9)
  })

  test('lies in the likely range near the prediction, and far from it not', () => {
    const predicted = asItStands('none')
    const near = compared(
      'before',
      predicted.map((difference) => difference - 1),
    )
    const far = compared(
      'before',
      predicted.map((difference) => difference - 40),
    )
    expect(near.octaves.map(({ isWithin }) => isWithin)).toEqual(OCTAVE_KEYS.map(() => true))
    expect(far.octaves.map(({ isWithin }) => isWithin)).toEqual(OCTAVE_KEYS.map(() => false))
  })

  test('has a range of its own: what the source is unsure of is not in a difference', () => {
    const predicted = asItStands('none').map((difference) => difference - 12)
    const sure = compared('before', predicted, { ...BUILT, source: { sdDb: 0 } })
    const unsure = compared('before', predicted, { ...BUILT, source: { sdDb: 20 } })
    expect(unsure.octaves).toEqual(sure.octaves)
  })

  test('is held against the scheme once it is built', () => {
    const before = compared('before', asItStands('none'))
    const after = compared('after', asItStands('none'))
    expect(after.against).toBe('scheme')
    expect(after.fits).toEqual([])
    expect(after.octaves[3]!.predictedDb).toBeGreaterThan(before.octaves[3]!.predictedDb! + 5)
  })

  test('needs no source: a level difference is one without it', () => {
    const predicted = asItStands('none')
    const comparison = compared('before', predicted, { ...BUILT, receiver: { source: null } })
    for (const each of off(comparison)) expect(each).toBeCloseTo(0, 9)
  })

  test('leaves out octaves nobody measured, and says which', () => {
    const [, ...rest] = asItStands('none')
    const comparison = compared('before', [null, ...rest])
    expect(comparison.octaves[0]).toMatchObject({ measuredDb: null, measuredLessPredictedDb: null, isWithin: null })
    expect(comparison.sentences).toContain('Left out, since nothing was measured or predicted there: 63 Hz.')
  })

  test('says what is missing where nothing is predicted or nothing measured', () => {
    const unknown = compared('before', asItStands('none'), {
      ...BUILT,
      receiver: { through: [{ surface: 'wall-1' }, { surface: 'gone' }] },
    })
    expect(off(unknown)).toEqual(OCTAVE_KEYS.map(() => null))
    expect(unknown.fits).toEqual([])
    expect(unknown.sentences.join(' ')).toContain('no longer in the room')
    const nothing = compared(
      'after',
      OCTAVE_KEYS.map(() => null),
    )
    expect(nothing.sentences).toEqual(['No octave has a measured difference yet: type at least one.'])
  })
})

/** A wall heavy enough that the way round tells the classes apart. */
const CONCRETE: Asked = {
  room: { ...HALL, walls: HALL.walls.map((wall) => ({ ...wall, existing: 'concrete-203' })) },
}

describe('the junction a baseline speaks for', () => {
  const like = (junction: JunctionClass, offDb: (octave: number) => number) =>
    compared(
      'before',
      asItStands(junction, CONCRETE).map((difference, octave) => difference + offDb(octave)),
      CONCRETE,
    )

  test('is the one whose prediction is nearest, with how far off it and the worst are', () => {
    const comparison = like('careful', (octave) => (octave % 2 ? 0.4 : -0.4))
    expect(comparison.fits[0]!.junction).toBe('careful')
    expect(comparison.fits[0]!.rmsDb).toBeCloseTo(0.4, 6)
    expect(comparison.fits).toHaveLength(JUNCTION_CLASSES.length)
    expect(comparison.sentences[0]).toMatch(
      /^The measured baseline fits "Ordinary, careful site" best: off by 0\.4 dB on average; ".+" would be off by \d+\.\d dB\.$/,
    )
  })

  test('is told as two where two fit alike', () => {
    const comparison = like('continuous-joists', () => 0)
    expect(comparison.sentences[0]).toMatch(
      /^The measured baseline fits "Continuous plates" and "Continuous joists" about equally, off by 0\.0 dB on average; "/,
    )
  })

  test('is none where even the nearest is far off', () => {
    const comparison = like('none', (octave) => (octave % 2 ? 15 : -15))
    expect(comparison.fits[0]!.rmsDb).toBeGreaterThan(6)
    expect(comparison.sentences[0]).toMatch(/^No junction fits the measured baseline: even ".+" is off by 1\d\.\d dB/)
  })

  test('cannot be told where a door decides as the room stands', () => {
    const [door] = openSample('garage').rooms[0]!.openings.filter(({ kind }) => kind === 'door')
    const leaky: Opening = {
      ...door!,
      wall: 'wall-1',
      fromMm: 1000,
      made: { type: 'door-hollow-core', seal: 'undercut' },
    }
    const asked = { room: { ...CONCRETE.room!, openings: [leaky] } }
    const comparison = compared('before', asItStands('none', asked), asked)
    expect(comparison.sentences[0]).toMatch(/^Every junction fits the measured baseline about equally, off by 0\.0 to/)
  })

  test('is not asked of what was measured after', () => {
    const after = compared('after', asItStands('none', CONCRETE), CONCRETE)
    expect(after.sentences).toEqual([])
  })
})

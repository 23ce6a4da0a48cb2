import { expressRow } from '#assemblies/published/express.ts'
import { publishedRows, sourceOf } from '#assemblies/published/rows.ts'
import { leaveGroupOut, leaveOneOut, trainingHalf, type UnseenPrediction, unseenHalf } from '../anchor/evaluate.ts'
import { type PredictedRow, predictedRows } from '../anchor/rows.ts'
import { halfOf } from '../anchor/split.ts'
import { fittedFor, GROUPS } from '../anchor/train.ts'
import { type CurveComparison, compareCurves } from './curves.ts'
import { FITTED_ROWS, familyName, isFramedWall, isUncertainInPrint } from './families.ts'
import { median, type Statistics, statisticsOf } from './statistics.ts'
import { isReproduced, trendResults } from './trends.ts'

/** One decimal, a real minus, and no "-0.0". */
function figure(value: number): string {
  const text = Math.abs(value).toFixed(1)
  return value < 0 && Number(text) !== 0 ? `−${text}` : text
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n')
}

function statisticsCells(s: Statistics): readonly string[] {
  return [String(s.n), figure(s.mean), figure(s.sd), figure(s.worst), `${Math.round(s.percentWithin3)} %`]
}

const STATISTICS_HEADS = ['n', 'mean', 'SD', 'worst', 'within 3']

/** Rows with a published STC; the rest print Rw only. */
export function ratedRows(): readonly PredictedRow[] {
  return predictedRows().filter(({ row }) => row.stc !== undefined)
}

export function physicsError({ row, physicsStc }: PredictedRow): number {
  return physicsStc - row.stc!
}

function physicsTable(rows: readonly PredictedRow[]): string {
  const families = [...new Set(rows.map(familyName))].toSorted()
  const framed = rows.filter(isFramedWall)
  const isIn = (family: string) => rows.filter((row) => familyName(row) === family)
  const line = (name: string, members: readonly PredictedRow[]) => [
    name,
    ...statisticsCells(statisticsOf(members.map(physicsError))),
  ]
  return table(
    ['family', ...STATISTICS_HEADS, 'goal'],
    [
      [...line('**all framed walls of the code table**', framed), 'mean within 1, SD 2.5'],
      [
        ...line(
          'framed walls, none of the 16 fitted',
          framed.filter((r) => !FITTED_ROWS.includes(r.row.id)),
        ),
        '',
      ],
      [
        ...line(
          'framed walls, training half',
          framed.filter((r) => halfOf(r.row.id) === 'training'),
        ),
        '',
      ],
      [
        ...line(
          'framed walls, unseen half',
          framed.filter((r) => halfOf(r.row.id) === 'unseen'),
        ),
        '',
      ],
      ...families.map((family) => {
        const cells = line(family, isIn(family))
        return [...cells, familyGoal(family, statisticsOf(isIn(family).map(physicsError)))]
      }),
    ],
  )
}

/** What is asked of a family, and whether it is reached. */
function familyGoal(family: string, { mean, sd }: Statistics): string {
  if (family === 'joists, channel') {
    return `mean within 1, SD 2: ${Math.abs(mean) <= 1 && sd <= 2 ? 'reached' : 'missed'}`
  }
  if (isUncertainInPrint(family)) return 'uncertain in print'
  return Math.abs(mean) <= 3 ? 'mean within 3: reached' : `mean within 3: missed by ${figure(Math.abs(mean) - 3)}`
}

function coverage(predictions: readonly UnseenPrediction[]): string {
  const held = predictions.filter(({ error, sdDb }) => Math.abs(error) <= 1.96 * sdDb)
  return `${Math.round((100 * held.length) / predictions.length)} %`
}

function anchoredLines(name: string, predictions: readonly UnseenPrediction[]): readonly (readonly string[])[] {
  const line = (label: string, members: readonly UnseenPrediction[]) => [
    name,
    label,
    ...statisticsCells(statisticsOf(members.map(({ error }) => error))),
    coverage(members),
    figure(median(members.map(({ sdDb }) => 1.96 * sdDb))),
  ]
  const framed = predictions.filter(({ group }) => group !== 'masonry')
  return [
    line('walls and floors', framed),
    ...GROUPS.map((group) =>
      line(
        group,
        predictions.filter((one) => one.group === group),
      ),
    ),
  ]
}

function anchoredTable(): string {
  return table(
    ['each row predicted from', 'rows', ...STATISTICS_HEADS, 'in the stated range', 'median ±'],
    [
      ...anchoredLines('all other rows (leave one out)', leaveOneOut()),
      ...anchoredLines('rows of other table letters and frames', leaveGroupOut()),
      ...anchoredLines('unseen half, from the training half', unseenHalf()),
      ...anchoredLines('training half, from the rest of that half', trainingHalf()),
    ],
  )
}

function trendsTable(): string {
  const verdict = (published: number, found: number | null) => {
    if (found === null) return ''
    return isReproduced(published, found) ? 'yes' : `missed by ${figure(Math.abs(found - published))}`
  }
  return table(
    ['change', 'rows', 'in print', 'calculated', 'reproduced', 'anchored', 'reproduced'],
    trendResults().map(({ change, rows, published, physics, anchored }) => [
      change,
      rows,
      figure(published),
      figure(physics),
      verdict(published, physics),
      anchored === null ? 'not anchored' : figure(anchored),
      verdict(published, anchored),
    ]),
  )
}

function rowTable(rows: readonly PredictedRow[]): string {
  const unseen = new Map(leaveOneOut().map((one) => [one.id, one]))
  return table(
    ['row', 'family', 'half', 'published', 'calculated', 'error', 'anchored without it', 'error', '±'],
    rows.map((one) => {
      const { row, physicsStc } = one
      const left = unseen.get(row.id)
      return [
        row.status === 'seen' ? row.id : `${row.id} (memory)`,
        familyName(one),
        FITTED_ROWS.includes(row.id) ? `${halfOf(row.id)}, fitted on` : halfOf(row.id),
        String(row.stc),
        figure(physicsStc),
        figure(physicsError(one)),
        left === undefined ? 'not anchored' : figure(row.stc! + left.error),
        left === undefined ? '' : figure(left.error),
        left === undefined ? '' : figure(1.96 * left.sdDb),
      ]
    }),
  )
}

function leftOutTable(): string {
  const reasons = publishedRows().flatMap((row) => {
    const expressed = expressRow(row)
    return expressed.ok ? [] : [[row.id, expressed.error] as const]
  })
  const byReason = [...new Set(reasons.map(([, reason]) => reason))]
  return table(
    ['why', 'rows'],
    byReason.map((why) => [why, reasons.flatMap(([id, reason]) => (reason === why ? [id] : [])).join(', ')]),
  )
}

function curveTable(curves: readonly CurveComparison[]): string {
  return table(
    ['curve', 'kind', 'what', 'read', 'rms dB', 'anchored', '63', '125', '250', '500', '1k', '2k', '4k'],
    curves.map(({ id, group, description, assumed, status, rmsDb, anchoredRmsDb, errorsDb }) => [
      id,
      group,
      assumed === null ? description : `${description} (assumed: ${assumed})`,
      status,
      figure(rmsDb),
      figure(anchoredRmsDb),
      ...errorsDb.slice(0, 7).map((error) => (error === null ? '' : figure(error))),
    ]),
  )
}

function curveSummary(curves: readonly CurveComparison[]): string {
  const kinds = [...new Set(curves.map(({ group }) => group))]
  return table(
    ['kind', 'curves', 'median rms dB', 'within 5 dB', 'anchored median'],
    kinds.map((kind) => {
      const members = curves.filter(({ group }) => group === kind)
      const rms = members.map(({ rmsDb }) => rmsDb)
      return [
        kind,
        String(members.length),
        figure(median(rms)),
        String(rms.filter((value) => value <= 5).length),
        figure(median(members.map(({ anchoredRmsDb }) => anchoredRmsDb))),
      ]
    }),
  )
}

function sources(): string {
  const texts = new Set(
    publishedRows()
      .map((row) => sourceOf({ ...row, where: undefined }))
      .map((s) => `${s.text} (${s.status})`),
  )
  return [...texts].map((text) => `- ${text}`).join('\n')
}

/** The whole of tests/reference/VALIDATION.md. */
export function validationText(): string {
  const rows = ratedRows()
  const curves = compareCurves()
  const fitted = GROUPS.map((group) => {
    const { factor, noiseDb } = fittedFor(group)
    return `${group}: factor ${factor}, noise ${noiseDb} dB`
  }).join('; ')
  return `# What Leafgap predicts against what is in print

Written by \`npm run validate\`; a test fails when it is stale. Errors are predicted minus published, in STC. Predictions
are continuous (0.1 dB, with the 8 dB rule, because nearly all the tables are older than its removal) for a 10 m2
specimen, windows 1.82 m2. Where a table gives one value for several spacings or boards, the lowest prediction counts.

![Calculated and anchored STC against the published one](validation.svg)

## What was fitted, and on what

- The calculation has seven constants that were fitted numerically, on the sixteen rows marked "fitted on" below, before
  this project, and two compliances of plates chosen against the staggered and double rows. The other rows of the code
  table were in view while its form was chosen. So the first table is **not blind**: run blind on two tables that are not
  among these rows, an earlier form of the method had RMS 4.4 and 4.8 STC.
- The correction towards print (the anchor) is a Gaussian-process regression of published minus calculated over features
  of the build-up. Its scales were set by hand (src/acoustics/anchor/data/scales.json). Two numbers a group were fitted,
  on the training half only: ${fitted}.
  The halves are parted by a hash of the row's id (tests/tools/anchor/split.ts), committed before anything was fitted; but
  a throw-away trial on the same halves came first and chose between five forms of covariance, so the unseen half is not
  wholly blind either. That trial showed that fitting every scale on the training half does worse on the other one.
- What ships is conditioned on every row of both halves, with those two numbers. **No figure below is in-sample**: each
  anchored prediction is made without its row.
- No window is anchored: the two tables of glazing at hand disagree by about 4 STC. Rows marked memory are compared, never
  leaned on.

## Physics alone

${physicsTable(rows)}

Boards fixed straight under joists and to wood or heavy steel studs are uncertain in print: tables differ by up to 10 STC
for one construction, and the stated range says so.

## Anchored

Goals: leave one out SD 1.5 and 95 % within 3; unseen half |mean| 1, SD 2, 90 % within 3, floors SD 2.5; the stated 95 %
range holds at least 90 % of unseen rows.

${anchoredTable()}

"Stated range" is ±1.96 posterior SD, in which laboratories' own disagreement is never below SD 2.0 and up to 5.0 where
two tables disagree that much (src/acoustics/data/spread.json).

## Trends within one table

What the laboratory adds cancels. Reproduced: the same sign, and within 3 STC. The anchor is asked with every row of the
trend left out.

${trendsTable()}

## Curves

Octaves, energy mean of three thirds, calculated minus published, both counted up to 80 dB.

${curveSummary(curves)}

${curveTable(curves)}

## Row by row

${rowTable(rows)}

## Rows that cannot be written in our layers

${leftOutTable()}

## Sources

${sources()}
`
}

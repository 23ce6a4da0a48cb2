import { expressRow } from '#assemblies/published/express.ts'
import { publishedRows, sourceOf } from '#assemblies/published/rows.ts'
import { leaveOneOut } from '../anchor/evaluate.ts'
import type { PredictedRow } from '../anchor/rows.ts'
import { halfOf } from '../anchor/split.ts'
import { fittedFor, GROUPS } from '../anchor/train.ts'
import { anchoredGoals, anchoredTable } from './anchored.ts'
import { type CurveComparison, compareCurves } from './curves.ts'
import { FITTED_ROWS, familyName } from './families.ts'
import { figure, table } from './format.ts'
import { physicsError, physicsTable, ratedRows } from './physics.ts'
import { median } from './statistics.ts'
import { isReproduced, trendResults } from './trends.ts'

function trendsTable(): string {
  const reproduced = (published: number, found: number | null) => {
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
      reproduced(published, physics),
      anchored === null ? 'not anchored' : figure(anchored),
      reproduced(published, anchored),
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
- No window is anchored: the two tables of glazing at hand disagree by about 4 STC. Rows marked memory, one slab that contradicts
  two other tables (ROSSING-19) and two rows that their own table's pattern contradicts (NBC-S14f, NBC-F8i) are predicted
  and counted like the rest; nothing leans on them.

## Physics alone

${physicsTable(rows)}

Boards fixed straight under joists and to wood or heavy steel studs are uncertain in print: tables differ by up to 10 STC
for one construction, and the stated range says so.

## Anchored

${anchoredGoals()}

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

import { type PredictedRow, predictedRows } from '../anchor/rows.ts'
import { halfOf } from '../anchor/split.ts'
import { FITTED_ROWS, familyName, isFramedWall, isUncertainInPrint } from './families.ts'
import { figure, STATISTICS_HEADS, statisticsCells, table, verdict } from './format.ts'
import { type Statistics, statisticsOf } from './statistics.ts'

/** Rows with a published STC; the rest print Rw only. */
export function ratedRows(): readonly PredictedRow[] {
  return predictedRows().filter(({ row }) => row.stc !== undefined)
}

export function physicsError({ row, physicsStc }: PredictedRow): number {
  return physicsStc - row.stc!
}

/** How the calculation alone comes out, by family. */
export function physicsTable(rows: readonly PredictedRow[]): string {
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
      [...line('**all framed walls of the code table**', framed), framedGoal(framed)],
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

function framedGoal(framed: readonly PredictedRow[]): string {
  const { mean, sd } = statisticsOf(framed.map(physicsError))
  return `mean within 1, SD 2.5: ${verdict(Math.abs(mean) <= 1 && sd <= 2.5)}`
}

/** What is asked of a family, and whether it is reached. */
function familyGoal(family: string, { mean, sd }: Statistics): string {
  if (family === 'joists, channel') {
    return `mean within 1, SD 2: ${verdict(Math.abs(mean) <= 1 && sd <= 2)}`
  }
  if (isUncertainInPrint(family)) return 'uncertain in print'
  return Math.abs(mean) <= 3 ? 'mean within 3: reached' : `mean within 3: missed by ${figure(Math.abs(mean) - 3)}`
}

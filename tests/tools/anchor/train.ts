import type { AnchorGroup } from '#acoustics/anchor/point.ts'
import { fittedOn, inverseGram } from './regression.ts'
import { type TrainingRow, trainingRows } from './rows.ts'
import { halfOf } from './split.ts'

export const ANCHOR_FILE = 'src/acoustics/anchor/data/anchor.json'
const GROUPS: readonly AnchorGroup[] = ['walls', 'floors', 'masonry']

export function rowsOf(group: AnchorGroup): readonly TrainingRow[] {
  return trainingRows().filter((row) => row.group === group)
}

/** Six significant digits: enough for a hundredth of a decibel, and few enough to be the same everywhere. */
function short(value: number): number {
  return Number(value.toPrecision(6))
}

function trainGroup(group: AnchorGroup) {
  const rows = rowsOf(group)
  const fitted = fittedOn(
    rows.filter(({ id }) => halfOf(id) === 'training'),
    group,
  )
  const inverse = inverseGram(rows, group, fitted)
  const weights = inverse.map((line) => short(line.reduce((sum, value, i) => sum + value * rows[i]!.residual, 0)))
  return {
    ...fitted,
    rows: rows.map(({ id, stc, place }, i) => ({ id, stc, ...place, weight: weights[i]! })),
    inverse: inverse.map((line, i) => line.slice(0, i + 1).map((value) => Number(value.toFixed(6)))),
  }
}

/** The committed file, as text: two numbers a group fitted on the training half, then every row conditioned on. */
export function trainedFile(): string {
  const lines = GROUPS.map((group) => {
    const { factor, noiseDb, rows, inverse } = trainGroup(group)
    const list = (items: readonly unknown[]) => items.map((item) => `      ${JSON.stringify(item)}`).join(',\n')
    return `    "${group}": {\n      "factor": ${factor}, "noiseDb": ${noiseDb},\n      "rows": [\n${list(rows)}\n      ],\n      "inverse": [\n${list(inverse)}\n      ]\n    }`
  })
  const what =
    'made by npm run train-anchor: published minus calculated STC, regressed over build-ups; factor and noiseDb fitted on the training half, rows and weights of both halves; inverse: lower triangle of the inverse covariance, 1/dB2'
  return `{\n  "what": "${what}",\n  "status": "derived",\n  "groups": {\n${lines.join(',\n')}\n  }\n}\n`
}

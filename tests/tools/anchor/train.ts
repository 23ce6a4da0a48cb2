import type { AnchorGroup } from '#acoustics/anchor/point.ts'
import { conditioned, type Fitted, fittedOn } from './regression.ts'
import { type TrainingRow, trainingRows } from './rows.ts'
import { halfOf } from './split.ts'

export const ANCHOR_FILE = 'src/acoustics/anchor/data/anchor.json'
export const GROUPS: readonly AnchorGroup[] = ['walls', 'floors', 'masonry']

export function rowsOf(group: AnchorGroup): readonly TrainingRow[] {
  return trainingRows().filter((row) => row.group === group)
}

const fitted = new Map<AnchorGroup, Fitted>()

/** The two numbers of a group, from its training half only; fitted once. */
export function fittedFor(group: AnchorGroup): Fitted {
  const known = fitted.get(group)
  if (known !== undefined) return known
  const training = rowsOf(group).filter(({ id }) => halfOf(id) === 'training')
  const numbers = fittedOn(training, group)
  fitted.set(group, numbers)
  return numbers
}

/** Six decimals or digits: enough for a hundredth of a decibel, and few enough to be the same everywhere. */
function trainGroup(group: AnchorGroup) {
  const numbers = fittedFor(group)
  const { rows, inverse } = conditioned(rowsOf(group), group, numbers)
  return {
    ...numbers,
    rows: rows.map((row) => ({ ...row, weight: Number(row.weight.toPrecision(6)) })),
    inverse: inverse.map((line) => line.map((value) => Number(value.toFixed(6)))),
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

import { correctionOf, prepare } from '#acoustics/anchor/correction.ts'
import type { AnchorGroup } from '#acoustics/anchor/point.ts'
import { laboratorySd } from '#acoustics/layered/spread.ts'
import { conditioned } from './regression.ts'
import { predictedRows, type TrainingRow } from './rows.ts'
import { halfOf } from './split.ts'
import { fittedFor, GROUPS, rowsOf } from './train.ts'

/** An anchored prediction of a row that none of the rows behind it is. */
export interface UnseenPrediction {
  readonly id: string
  readonly group: AnchorGroup
  /** Anchored minus published STC. */
  readonly error: number
  /** Standard deviation that would have been stated. */
  readonly sdDb: number
}

function laboratoryOf(id: string): number {
  const system = predictedRows().find(({ row }) => row.id === id)?.systems[0]
  if (system === undefined) throw new Error(`${id} was calculated`)
  return laboratorySd(system)
}

/** Rows predicted from other rows, with the numbers of the training half. */
function predictFrom(
  known: readonly TrainingRow[],
  asked: readonly TrainingRow[],
  group: AnchorGroup,
): readonly UnseenPrediction[] {
  const trained = prepare(conditioned(known, group, fittedFor(group)))
  return asked.map(({ id, residual, place }) => {
    const { shiftDb, varianceDb2 } = correctionOf(trained, place, group)
    return { id, group, error: shiftDb - residual, sdDb: Math.hypot(laboratoryOf(id), Math.sqrt(varianceDb2)) }
  })
}

/** Every row of these, each set of one key predicted from all that have another. */
function leaveOut(
  rows: readonly TrainingRow[],
  group: AnchorGroup,
  keyOf: (row: TrainingRow) => string,
): readonly UnseenPrediction[] {
  const keys = [...new Set(rows.map(keyOf))]
  return keys.flatMap((key) =>
    predictFrom(
      rows.filter((row) => keyOf(row) !== key),
      rows.filter((row) => keyOf(row) === key),
      group,
    ),
  )
}

let oneOut: readonly UnseenPrediction[] | undefined

/** Every row from all others; worked out once. */
export function leaveOneOut(): readonly UnseenPrediction[] {
  oneOut ??= GROUPS.flatMap((group) => leaveOut(rowsOf(group), group, ({ id }) => id))
  return oneOut
}

/** Every row from the rows of other table letters and frames. */
export function leaveGroupOut(): readonly UnseenPrediction[] {
  const frames = new Map(predictedRows().map(({ row }) => [row.id, row.build?.framing ?? row.id.split('-')[0]]))
  const key = ({ id }: TrainingRow) => `${/^NBC-([A-Z]+)/.exec(id)?.[1] ?? ''} ${frames.get(id)}`
  return GROUPS.flatMap((group) => leaveOut(rowsOf(group), group, key))
}

/** The half nothing was fitted on, from the training half. */
export function unseenHalf(): readonly UnseenPrediction[] {
  return GROUPS.flatMap((group) => {
    const rows = rowsOf(group)
    const known = rows.filter(({ id }) => halfOf(id) === 'training')
    const asked = rows.filter(({ id }) => halfOf(id) === 'unseen')
    return predictFrom(known, asked, group)
  })
}

/** The training half, each row from the rest of that half. */
export function trainingHalf(): readonly UnseenPrediction[] {
  return GROUPS.flatMap((group) => {
    const rows = rowsOf(group).filter(({ id }) => halfOf(id) === 'training')
    return leaveOut(rows, group, ({ id }) => id)
  })
}

/** These rows, none of them known to the correction: anchored STC by id. */
export function anchoredWithout(ids: readonly string[]): ReadonlyMap<string, number> {
  const out = new Map<string, number>()
  for (const group of GROUPS) {
    const rows = rowsOf(group)
    const asked = rows.filter(({ id }) => ids.includes(id))
    if (asked.length === 0) continue
    const known = rows.filter(({ id }) => !ids.includes(id))
    for (const { id, error } of predictFrom(known, asked, group)) {
      out.set(id, rows.find((row) => row.id === id)!.stc + error)
    }
  }
  return out
}

import { leaveGroupOut, leaveOneOut, trainingHalf, type UnseenPrediction, unseenHalf } from '../anchor/evaluate.ts'
import { GROUPS } from '../anchor/train.ts'
import { figure, STATISTICS_HEADS, statisticsCells, table, verdict } from './format.ts'
import { median, statisticsOf } from './statistics.ts'

function coverageOf(predictions: readonly UnseenPrediction[]): number {
  return predictions.filter(({ error, sdDb }) => Math.abs(error) <= 1.96 * sdDb).length / predictions.length
}

function coverage(predictions: readonly UnseenPrediction[]): string {
  return `${Math.round(100 * coverageOf(predictions))} %`
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

/** The goals set for anchored predictions, one line each. */
export function anchoredGoals(): string {
  const isFramed = ({ group }: UnseenPrediction) => group !== 'masonry'
  const of = (predictions: readonly UnseenPrediction[]) => statisticsOf(predictions.map(({ error }) => error))
  const one = of(leaveOneOut().filter(isFramed))
  const half = of(unseenHalf().filter(isFramed))
  const floors = of(unseenHalf().filter(({ group }) => group === 'floors'))
  const lines: readonly (readonly [string, boolean])[] = [
    [`leave one out, walls and floors: SD ${figure(one.sd, 2)}, goal 1.5`, one.sd <= 1.5],
    [
      `leave one out, walls and floors: ${one.percentWithin3.toFixed(1)} % within 3, goal 95 %`,
      one.percentWithin3 >= 95,
    ],
    [`unseen half, walls and floors: mean ${figure(half.mean, 2)}, goal within 1`, Math.abs(half.mean) <= 1],
    [`unseen half, walls and floors: SD ${figure(half.sd, 2)}, goal 2`, half.sd <= 2],
    [
      `unseen half, walls and floors: ${half.percentWithin3.toFixed(1)} % within 3, goal 90 %`,
      half.percentWithin3 >= 90,
    ],
    [`unseen half, floors: SD ${figure(floors.sd, 2)}, goal 2.5`, floors.sd <= 2.5],
    [
      `unseen half, all: ${coverage(unseenHalf())} in the stated 95 % range, goal 90 %`,
      coverageOf(unseenHalf()) >= 0.9,
    ],
  ]
  return lines.map(([text, isReached]) => `- ${text}: ${verdict(isReached)}`).join('\n')
}

/** How anchored predictions come out, none of them with its own row known. */
export function anchoredTable(): string {
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

import type { AnalysisInput } from '#analysis/analyse.ts'
import type { FurnitureCheck, SchemeResult } from '#analysis/results.ts'

/** Whether every piece of furniture finds its place in the clear room, free of walls, swings and low drops. */
export function checkFurniture(
  _input: AnalysisInput,
  _result: Pick<SchemeResult, 'clear' | 'heights' | 'openings'>,
): readonly FurnitureCheck[] {
  return []
}

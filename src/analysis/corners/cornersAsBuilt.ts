import type { AnalysisInput } from '#analysis/analyse.ts'
import type { CornerAsBuilt, SchemeResult } from '#analysis/results.ts'

/** Which lining runs through at every corner, the gap left, and where a resilient one would touch an untreated wall. */
export function cornersAsBuilt(
  _input: AnalysisInput,
  _result: Pick<SchemeResult, 'surfaces'>,
): readonly CornerAsBuilt[] {
  return []
}

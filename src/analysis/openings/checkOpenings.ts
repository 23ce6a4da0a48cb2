import type { AnalysisInput } from '#analysis/analyse.ts'
import type { OpeningCheck, SchemeResult } from '#analysis/results.ts'

/** What a scheme leaves of every door, window and vent, and what their leaves meet. */
export function checkOpenings(
  _input: AnalysisInput,
  _result: Pick<SchemeResult, 'inset' | 'clear' | 'surfaces' | 'ledger' | 'heights'>,
): readonly OpeningCheck[] {
  return []
}

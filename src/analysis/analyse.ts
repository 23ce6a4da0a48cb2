import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import type { InsetRefusal } from '#geometry/inset/insetRoom.ts'
import { fail, type Result } from '#units/result.ts'

export interface AnalysisInput {
  readonly room: Room
  readonly scheme: Scheme
  readonly catalogue: Catalogue
  readonly quality: 'drag' | 'plot'
}

/** A scheme's results, or why its geometry was refused. */
export type SchemeAnalysis = Result<SchemeResult, InsetRefusal>

export function analyseScheme(_input: AnalysisInput): SchemeAnalysis {
  return fail({ code: 'engine', message: '', walls: [] })
}

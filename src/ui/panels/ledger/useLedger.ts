import type { SchemeResult } from '#analysis/results.ts'
import type { Project } from '#project/project.ts'
import type { ResultsMemo } from '#state/results.ts'
import { useAnalysis, useDocument, useRoom, useScheme, useSession, useView } from '#ui/session.ts'

export interface LedgerFacts {
  /** As shown; null: the geometry was refused and no earlier one is known. */
  readonly result: SchemeResult | null
  /** Why these are not the present numbers; null: they are. */
  readonly refusal: string | null
  /** Before the last command, or before what the hand is trying; null: nothing to compare with. */
  readonly before: SchemeResult | null
  /** What made the change, as a command reads. */
  readonly cause: string
}

/** The ledger's numbers with those before the last command. */
export function useLedger(): LedgerFacts {
  const { results } = useSession()
  const analysis = useAnalysis()
  const roomId = useRoom().id
  const schemeId = useScheme().id
  const project = useDocument((state) => state.project)
  const isPreview = useDocument((state) => state.preview !== null)
  const isPointed = useView((view) => view.pointedAssembly !== null)
  const past = useDocument((state) => state.past)
  const last = past.at(-1)
  const isNewRoom = last !== undefined && startsAnew(last.label)
  const former = isPreview ? project : isNewRoom ? null : (last?.project ?? null)
  // Another project opened over this one is no change to it.
  const before = former?.name === project.name ? former : null
  const good = analysis.ok ? analysis.value : lastGood([...past].reverse().map((step) => step.project))
  return {
    result: good,
    refusal: analysis.ok ? null : analysis.error.message,
    before: before && resultOf(before),
    cause: isPreview ? (isPointed ? 'if chosen' : 'so far') : `with "${last?.label ?? ''}"`,
  }

  function resultOf(from: Project): SchemeResult | null {
    return projectResult(results, from, roomId, schemeId)
  }
  function lastGood(projects: readonly Project[]): SchemeResult | null {
    for (const candidate of [project, ...projects]) {
      const found = resultOf(candidate)
      if (found) return found
    }
    return null
  }
}

/** A step that puts another room on the page: its numbers are no change of the former one's. */
export function startsAnew(label: string): boolean {
  return /^(start|open|draw the outline)\b/.test(label)
}

/** One scheme's results in one room of a project; null where either is missing or was refused. */
export function projectResult(
  results: ResultsMemo,
  project: Project,
  roomId: string,
  schemeId: string,
): SchemeResult | null {
  const room = project.rooms.find((candidate) => candidate.id === roomId)
  const scheme = project.schemes.find((candidate) => candidate.id === schemeId)
  if (!room || !scheme) return null
  const outcome = results(project, room, scheme)
  return outcome.ok ? outcome.value : null
}

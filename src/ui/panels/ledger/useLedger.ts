import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Project } from '#project/project.ts'
import { projectAnswers } from '#state/answers.ts'
import type { ResultsMemo } from '#state/results.ts'
import { useAnalysis, useDocument, useRoom, useScheme, useSession, useShownProject, useView } from '#ui/session.ts'

export interface LedgerFacts {
  /** As shown; null: the geometry was refused and no earlier one is known. */
  readonly result: SchemeResult | null
  /** Why these are not the present numbers; null: they are. */
  readonly refusal: string | null
  /** Before the last command, or before what the hand is trying; null: nothing to compare with. */
  readonly before: SchemeResult | null
  /** What the receivers hear, of the same result; empty: there are none, or no result. */
  readonly answers: readonly ReceiverAnswer[]
  readonly answersBefore: readonly ReceiverAnswer[]
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
  const isPointed = useView((view) => view.pointedAssembly !== null || view.pointedStep !== null)
  const past = useDocument((state) => state.past)
  const shown = useShownProject()
  const last = past.at(-1)
  const factsOf = (from: Project) => projectFacts(results, from, roomId, schemeId)
  const earlier = [project, ...[...past].reverse().map((step) => step.project)]
  const good = analysis.ok ? factsOf(shown) : firstOf(earlier, factsOf)
  const former = formerProject(project, isPreview, last)
  const before = former && factsOf(former)
  return {
    result: good?.result ?? null,
    refusal: analysis.ok ? null : analysis.error.message,
    before: before?.result ?? null,
    answers: good?.answers ?? [],
    answersBefore: before?.answers ?? [],
    cause: isPreview ? (isPointed ? 'if chosen' : 'so far') : `with "${last?.label ?? ''}"`,
  }
}

/** What the numbers are compared with: what is recorded while a hand tries something, else what was before the last step. */
function formerProject(
  project: Project,
  isPreview: boolean,
  last: { readonly label: string; readonly project: Project } | undefined,
): Project | null {
  if (isPreview) return project
  if (last === undefined || startsAnew(last.label)) return null
  // Another project opened over this one is no change to it.
  return last.project.name === project.name ? last.project : null
}

function firstOf<Found>(projects: readonly Project[], find: (project: Project) => Found | null): Found | null {
  for (const candidate of projects) {
    const found = find(candidate)
    if (found) return found
  }
  return null
}

type Facts = Pick<LedgerFacts, 'answers'> & { readonly result: SchemeResult }

/** One scheme's results and answers in one room of a project; null where either is missing or was refused. */
function projectFacts(results: ResultsMemo, project: Project, roomId: string, schemeId: string): Facts | null {
  const result = projectResult(results, project, roomId, schemeId)
  const room = project.rooms.find(({ id }) => id === roomId)
  const scheme = project.schemes.find(({ id }) => id === schemeId)
  return result && room && scheme ? { result, answers: projectAnswers(project, room, scheme, result) } : null
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

import { useEffect, useReducer, useState } from 'react'
import type { NextStep } from '#analysis/paths/nextSteps.ts'
import { knownSteps, type StepsOf, workOutSteps } from '#state/steps.ts'
import { useDocument, useRoom, useScheme, useSession } from '#ui/session.ts'

export interface NextStepsFacts {
  /** null: being worked out. */
  readonly steps: readonly NextStep[] | null
  /** They take long enough to say so. */
  readonly isSlow: boolean
}

/** They begin once nothing was changed for this long, so that they never stand in a hand's way, ms. */
const REST_MS = 60
/** Nothing under this is spoken of, ms. */
const SLOW_MS = 100

/** What could be done next for a receiver, from what is recorded, whatever is being tried. */
export function useNextSteps(receiverId: string | null): NextStepsFacts {
  const of = useStepsOf(receiverId)
  const steps = of && knownSteps(of)
  const [, tell] = useReducer((count: number) => count + 1, 0)
  const [slowFor, setSlow] = useState<unknown>(null)
  const [result, receiver, sources] = [of?.result, of?.receiver, of?.project.sources]
  // biome-ignore lint/correctness/useExhaustiveDependencies: the steps hang on these three, not on a project that changed elsewhere
  useEffect(() => {
    if (!of || knownSteps(of)) return undefined
    const slow = setTimeout(() => setSlow(result), SLOW_MS)
    const stop = bitByBit(workOutSteps(of), tell)
    return () => {
      clearTimeout(slow)
      stop()
    }
  }, [result, receiver, sources])
  return { steps: of === null ? [] : steps, isSlow: slowFor === result }
}

/** So long a hand or a finger never feels, ms. */
const BREATH_MS = 8

/** Carries work out with breaths between; what it answers with stops it. */
function bitByBit(work: Iterator<undefined, unknown, undefined>, done: () => void): () => void {
  let timer = setTimeout(bits, REST_MS)
  function bits() {
    const until = performance.now() + BREATH_MS
    while (performance.now() < until) {
      if (work.next().done) return done()
    }
    timer = setTimeout(bits)
  }
  return () => clearTimeout(timer)
}

/** null: no such receiver, or its plan is refused. */
function useStepsOf(receiverId: string | null): StepsOf | null {
  const { results } = useSession()
  const project = useDocument((state) => state.project)
  const roomId = useRoom().id
  const schemeId = useScheme().id
  const room = project.rooms.find(({ id }) => id === roomId)
  const scheme = project.schemes.find(({ id }) => id === schemeId)
  const receiver = project.receivers.find(({ id }) => id === receiverId)
  if (!room || !scheme || !receiver) return null
  const analysed = results(project, room, scheme)
  return analysed.ok ? { project, room, scheme, result: analysed.value, receiver } : null
}

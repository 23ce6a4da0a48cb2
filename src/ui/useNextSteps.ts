import { useEffect, useReducer, useRef } from 'react'
import type { NextStep } from '#analysis/paths/nextSteps.ts'
import { knownSteps, projectSteps, type StepsOf } from '#state/steps.ts'
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
  const lastTook = useRef(0)
  useEffect(() => {
    if (!of || knownSteps(of)) return undefined
    const timer = setTimeout(() => {
      const began = performance.now()
      projectSteps(of)
      lastTook.current = performance.now() - began
      tell()
    }, REST_MS)
    return () => clearTimeout(timer)
  })
  return { steps: of === null ? [] : steps, isSlow: lastTook.current + REST_MS > SLOW_MS }
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

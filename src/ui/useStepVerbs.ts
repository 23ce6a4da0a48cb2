import { useEffect } from 'react'
import type { NextStep } from '#analysis/paths/nextSteps.ts'
import type { Command } from '#state/command.ts'
import { changeScheme } from '#state/commands/changeScheme.ts'
import { useScheme, useSession } from '#ui/session.ts'

export interface StepVerbs {
  /** Shows a step everywhere while it is pointed at. */
  readonly point: (step: NextStep) => void
  readonly leave: () => void
  /** Does it: one undo step. The page goes on speaking of the receiver it was done for. */
  readonly take: (step: NextStep) => void
}

/** What can be done with a next step; its preview never outlives the place it was pointed at. */
export function useStepVerbs(receiverId: string): StepVerbs {
  const { document, view } = useSession()
  const schemeId = useScheme().id
  const leave = () => {
    if (view.getState().pointedStep === null) return
    document.cancelPreview()
    view.setState({ pointedStep: null })
  }
  useEffect(
    () => () => {
      if (view.getState().pointedStep === null) return
      document.cancelPreview()
      view.setState({ pointedStep: null })
    },
    [document, view],
  )
  return {
    leave,
    point: (step) => {
      if (document.show(stepCommand(schemeId, step)).ok) view.setState({ pointedStep: step.pathId })
    },
    take: (step) => {
      document.run(stepCommand(schemeId, step))
      view.setState({ pointedStep: null, receiverId })
    },
  }
}

/** Named in the Undo verb as the step reads: "Undo: hang a second sealed door in the lining". */
function stepCommand(schemeId: string, { change, label }: NextStep): Command {
  return changeScheme(schemeId, change, label.charAt(0).toLowerCase() + label.slice(1))
}

import { useMemo } from 'react'
import { targetCautions } from '#analysis/cautions/targets.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { SheetHeard } from '#drawing/sheet/heard.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import { useAnswers, useReceiverAnswer } from '#ui/answers.ts'
import { useRoom, useScheme, useShownProject } from '#ui/session.ts'

/** What the sheet tells of who hears the room on the page; absent where there is no result. */
export function useSheetHeard(result: SchemeResult | null): SheetHeard | undefined {
  const project = useShownProject()
  const room = useRoom()
  const scheme = useScheme()
  const answers = useAnswers()
  const marked = useReceiverAnswer()?.receiverId
  return useMemo(() => {
    if (result === null) return undefined
    const { receivers, sources } = project
    const named = answers.flatMap((answer) => {
      const receiver = receivers.find(({ id }) => id === answer.receiverId)
      const source = sources.find(({ id }) => id === receiver?.source) ?? null
      return receiver ? [{ receiver, source, answer }] : []
    })
    const cautions = targetCautions({ room, scheme, sources, receivers, result })
    return { scheme, catalogue: projectCatalogue(project), receivers: named, cautions, marked }
  }, [project, room, scheme, result, answers, marked])
}

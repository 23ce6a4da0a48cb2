import { useMemo } from 'react'
import { projectAnswers } from '#state/answers.ts'
import { worstAnswer } from '#ui/answers.ts'
import { type MarginOn, marginOn } from '#ui/panels/bench/marginOn.ts'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { useCatalogue, useDocument, useSession, useView } from '#ui/session.ts'

/**
 * The margins for the ruler, of the recorded project: pointing at a mark previews that very mark, so none of them may move
 * while the hand goes from one to the next.
 */
export function useMarginOn({ scheme, surfaces, candidates }: BenchState): MarginOn {
  const { results } = useSession()
  const catalogue = useCatalogue()
  const project = useDocument((state) => state.project)
  const roomId = useView((view) => view.roomId)
  const receiverId = useView((view) => view.receiverId)
  const { receivers, sources } = project
  const room = project.rooms.find(({ id }) => id === roomId) ?? project.rooms[0]
  return useMemo((): MarginOn => {
    if (!room || !receivers.some((receiver) => receiver.room === room.id)) return { kind: 'none' }
    const analysed = results(project, room, scheme)
    if (!analysed.ok) return { kind: 'none' }
    const result = analysed.value
    const answers = projectAnswers(project, room, scheme, result)
    const answer = answers.find((one) => one.receiverId === receiverId) ?? worstAnswer(answers)
    return marginOn({ room, scheme, result, sources, receivers, catalogue }, answer, surfaces, candidates)
  }, [results, project, room, scheme, receivers, sources, receiverId, catalogue, surfaces, candidates])
}

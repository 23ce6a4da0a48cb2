import { useState } from 'react'
import { useReceiverAnswer } from '#ui/answers.ts'
import { ReceiverForm } from '#ui/panels/bench/targets/ReceiverForm.tsx'
import { ReceiverList } from '#ui/panels/bench/targets/ReceiverList.tsx'
import { SourceForm } from '#ui/panels/bench/targets/SourceForm.tsx'
import { SourceList } from '#ui/panels/bench/targets/SourceList.tsx'
import { TargetCautions } from '#ui/panels/bench/targets/TargetCautions.tsx'
import { useRoom, useSession, useShownProject, useView } from '#ui/session.ts'

/** What is heard and who must not hear it, in two lists; under them everything about the one in hand. */
export function TargetsView() {
  const { view } = useSession()
  const { sources } = useShownProject()
  const [sourceId, setSourceId] = useState<string | null>(null)
  const source = sources.find(({ id }) => id === sourceId) ?? null
  const receiver = useReceiverInHand()
  const pickReceiver = (receiverId: string) => {
    setSourceId(null)
    view.setState({ receiverId })
  }
  return (
    <div className="bench-view targets-view">
      <div className="target-lists">
        <SourceList pickedId={source?.id ?? null} onPick={setSourceId} />
        <ReceiverList pickedId={source ? null : (receiver?.id ?? null)} onPick={pickReceiver} />
      </div>
      {source ? (
        <SourceForm key={source.id} source={source} />
      ) : (
        receiver && <ReceiverForm key={receiver.id} receiver={receiver} />
      )}
      <TargetCautions />
    </div>
  )
}

/** The receiver that was picked, else the one the page speaks of, else the room's first. */
function useReceiverInHand() {
  const room = useRoom()
  const { receivers } = useShownProject()
  const own = receivers.filter((receiver) => receiver.room === room.id)
  const pickedId = useView((state) => state.receiverId)
  const answer = useReceiverAnswer()
  return own.find(({ id }) => id === pickedId) ?? own.find(({ id }) => id === answer?.receiverId) ?? own[0] ?? null
}

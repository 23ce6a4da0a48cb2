import { useEffect, useRef, useState } from 'react'
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
  const lists = useRef<HTMLDivElement>(null)
  const hand = useRef<HTMLDivElement>(null)
  const inHand = source?.id ?? receiver?.id ?? null
  const count = useShownProject().receivers.length + sources.length
  // A verb that went with its row or its list leaves the keyboard with what is in hand, or with what can be added.
  useEffect(() => {
    const place = inHand === null || count === 0 ? lists : hand
    if (isLost(document.activeElement)) place.current?.focus({ preventScroll: true })
  }, [inHand, count])
  return (
    <div className="bench-view targets-view">
      <div ref={lists} tabIndex={-1} className="target-lists">
        <SourceList pickedId={source?.id ?? null} onPick={setSourceId} />
        <ReceiverList pickedId={source ? null : (receiver?.id ?? null)} onPick={pickReceiver} />
      </div>
      <div ref={hand} tabIndex={-1} className="target-hand">
        {source ? (
          <SourceForm key={source.id} source={source} />
        ) : (
          receiver && <ReceiverForm key={receiver.id} receiver={receiver} />
        )}
      </div>
      <TargetCautions />
    </div>
  )
}

/** Nothing has the keyboard, or what has it was just folded away. */
function isLost(active: Element | null): boolean {
  return active === null || active === document.body || active.closest('details:not([open]) > :not(summary)') !== null
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

import { useState } from 'react'
import type { Point } from '#geometry/polygon.ts'
import type { Command } from '#state/command.ts'
import { cutRoom } from '#state/commands/partitions.ts'
import { cutSentence } from '#ui/canvas/addWords.ts'
import { addedThing, cuttingLine, usualCut, whereOf } from '#ui/canvas/placing.ts'
import type { Touchable } from '#ui/canvas/planTarget.ts'
import type { Press } from '#ui/canvas/pointer.ts'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { distance, type Snapped } from '#ui/canvas/snap.ts'
import { type AddGestures, snapped } from '#ui/canvas/useAddGestures.ts'
import { useSession } from '#ui/session.ts'

/** Less than this two presses are one place, mm. */
const LEAST_LINE = 50

interface Tried {
  readonly anchor: Point | null
  readonly pointer: Snapped | null
  readonly refusal: string | null
}

const NOTHING: Tried = { anchor: null, pointer: null, refusal: null }

/** Cuts the room in two by a line of two presses, shown before it is recorded. */
export function useCutGestures(input: Touchable, isTouch: boolean): AddGestures {
  const session = useSession()
  const [tried, setTried] = useState<Tried>(NOTHING)
  const { project, room, result } = input

  const commandTo = (to: Point): Command | null =>
    tried.anchor && distance(tried.anchor, to) >= LEAST_LINE
      ? cutRoom(room.id, tried.anchor, to, usualCut(project))
      : null
  const attempt = (press: Press): void => {
    const pointer = snapped(input, press, tried.anchor)
    const command = commandTo(pointer.point)
    const outcome = command && session.document.show(command)
    if (!outcome?.ok) session.document.cancelPreview()
    setTried({ ...tried, pointer, refusal: outcome && !outcome.ok ? outcome.error.message : null })
  }
  const put = (command: Command): void => {
    setTried(NOTHING)
    const outcome = session.document.run(command)
    if (!outcome.ok) return
    const thing = addedThing(outcome.value, whereOf(room), 'partition')
    session.view.setState({ ...NOTHING_SELECTED, thing, tool: 'select' })
  }
  const press = (now: Press): void => {
    const pointer = snapped(input, now, tried.anchor)
    const command = commandTo(pointer.point)
    if (command) put(command)
    else setTried({ anchor: tried.anchor ?? pointer.point, pointer, refusal: null })
  }
  const cancel = (): void => {
    session.document.cancelPreview()
    setTried(NOTHING)
  }
  return {
    state: {
      sentence: tried.refusal ?? cutSentence(tried.anchor !== null, isTouch),
      isRefused: tried.refusal !== null,
      anchor: tried.anchor,
      pointer: tried.pointer,
      ghost: null,
    },
    gestures: {
      hover: (now) => {
        if (now) {
          attempt(now)
          return
        }
        session.document.cancelPreview()
        setTried({ ...tried, pointer: null, refusal: null })
      },
      down: (now) => {
        if (tried.anchor === null) press(now)
        return true
      },
      drag: attempt,
      drop: press,
      cancel,
      click: press,
    },
    placeByKey: () =>
      put(cutRoom(room.id, ...cuttingLine({ room, result, units: project.units }, null), usualCut(project))),
  }
}

import { useRef } from 'react'
import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Project, Underlay } from '#project/project.ts'
import { changeUnderlay } from '#state/commands/underlays.ts'
import type { Gestures, Press } from '#ui/canvas/pointer.ts'
import { useDocument, useSession, useView } from '#ui/session.ts'
import { plainAngle, turnHandle } from '#ui/trace/placement.ts'

/** How near its handle takes a picture up, px. */
const REACH = { mouse: 12, touch: 24 }
/** A hand turns in these steps, degrees; with Alt in the finer. */
const STEP = 1
const FINE_STEP = 0.1

/** The selected picture that a hand may turn; null: none, or it is locked or hidden. */
export function useTurnable(project: Project): Underlay | null {
  const thing = useView((view) => (view.tool === 'select' ? view.thing : null))
  if (thing?.kind !== 'underlay') return null
  const found = project.underlays.find(({ id }) => id === thing.id)
  return found?.isShown && !found.isLocked ? found : null
}

/** Turns the selected picture by its handle; everything else is left to the other gestures. */
export function useTurnPicture(frame: Frame, others: Gestures): Gestures {
  const { document } = useSession()
  const underlay = useTurnable(useDocument((state) => state.project))
  const held = useRef<Underlay | null>(null)
  const turn = (picture: Underlay, { at, free }: Press) => {
    const angle = (Math.atan2(at[1] - picture.yMm, at[0] - picture.xMm) * 180) / Math.PI - 90
    const step = free ? FINE_STEP : STEP
    return changeUnderlay(picture.id, { angleDeg: plainAngle(Math.round(angle / step) * step) })
  }
  return {
    ...others,
    down: (press) => {
      held.current = underlay && isOnHandle(underlay, frame, press) ? underlay : null
      return held.current !== null || others.down(press)
    },
    drag: (press) => {
      if (held.current) document.show(turn(held.current, press))
      else others.drag(press)
    },
    drop: (press) => {
      if (held.current) document.run(turn(held.current, press))
      else others.drop(press)
      held.current = null
    },
    cancel: () => {
      if (held.current) document.cancelPreview()
      else others.cancel()
      held.current = null
    },
    click: (press) => {
      if (held.current === null) others.click(press)
      held.current = null
    },
  }
}

function isOnHandle(underlay: Underlay, frame: Frame, press: Press): boolean {
  const [x, y] = toTarget(frame, turnHandle(underlay, frame.scale))
  return Math.hypot(x - press.place[0], y - press.place[1]) <= (press.isTouch ? REACH.touch : REACH.mouse)
}

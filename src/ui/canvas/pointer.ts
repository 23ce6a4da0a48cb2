import type { Frame } from '#drawing/frame.ts'
import { toPlan } from '#drawing/frame.ts'
import type { Place } from '#drawing/model.ts'
import type { Point } from '#geometry/polygon.ts'

/** A pointer event as the plan understands it. */
export interface Press {
  readonly place: Place
  readonly at: Point
  /** Keys that add to a selection. */
  readonly adds: boolean
  /** Alt releases snapping. */
  readonly free: boolean
  readonly isTouch: boolean
}

/** How far a hand may tremble before a press becomes a drag, px. */
export const TREMBLE = { mouse: 4, touch: 8 }

/** A finger held still so long asks for the verbs of what lies under it, ms. */
export const LONG_PRESS = 500

export function pressOf(event: MouseEvent, host: HTMLElement, frame: Frame): Press {
  const box = host.getBoundingClientRect()
  const place: Place = [event.clientX - box.left, event.clientY - box.top]
  return {
    place,
    at: toPlan(frame, place),
    adds: event.shiftKey || event.ctrlKey || event.metaKey,
    free: event.altKey,
    isTouch: 'pointerType' in event && event.pointerType === 'touch',
  }
}

export function movedFar(start: Press, now: Press): boolean {
  const away = Math.hypot(start.place[0] - now.place[0], start.place[1] - now.place[1])
  return away > (now.isTouch ? TREMBLE.touch : TREMBLE.mouse)
}

/** What a tool does with the pointer; a hand on the paper itself (pan, pinch, wheel) is not its business. */
export interface Gestures {
  hover(press: Press | null): void
  /** A press begins; true: moving drags something of the tool's own, else the paper moves. */
  down(press: Press): boolean
  drag(press: Press): void
  /** A drag ends where the hand let go. */
  drop(press: Press): void
  /** The hand takes its drag back. */
  cancel(): void
  click(press: Press): void
  /** A press held still, the other button, or the menu key: what can be done there. Absent: nothing. */
  menu?(press: Press): void
}

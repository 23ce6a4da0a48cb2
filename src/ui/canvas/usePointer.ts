import { type RefObject, useEffect, useRef } from 'react'
import type { Place } from '#drawing/model.ts'
import { type Gestures, LONG_PRESS, movedFar, type Press, pressOf } from '#ui/canvas/pointer.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { unreachable } from '#units/result.ts'

/** What the hand is doing between down and up. */
type Hand =
  | { readonly kind: 'idle' }
  | { readonly kind: 'pressed'; readonly start: Press; readonly isOwn: boolean }
  | { readonly kind: 'dragging' }
  | { readonly kind: 'panning'; readonly last: Place }
  | { readonly kind: 'pinching'; readonly last: Fingers }
  /** A menu was opened, or a pinch has one finger left: nothing more until all fingers are up. */
  | { readonly kind: 'spent' }

/** Two fingers on the paper. */
interface Fingers {
  readonly apart: number
  readonly middle: Place
}

/** Zoom by one notch of a wheel. */
const WHEEL_RATE = 0.0015

/**
 * Listens to pointer, wheel and Escape on the plan and tells the tool; moving the paper is done here.
 * Moves reach the tool once a frame, whatever the mouse's own rate.
 */
export function usePointer(host: RefObject<HTMLElement | null>, view: PlanFrame, gestures: Gestures): void {
  const latest = useRef({ view, gestures })
  useEffect(() => {
    latest.current = { view, gestures }
  })
  useEffect(() => {
    const element = host.current
    return element ? listen(element, latest) : undefined
  }, [host])
}

interface Listening {
  readonly view: PlanFrame
  readonly gestures: Gestures
}

function listen(element: HTMLElement, latest: RefObject<Listening>): () => void {
  const ended = new AbortController()
  const hand = createHand(element, latest)
  const { signal } = ended
  element.addEventListener('pointerdown', hand.down, { signal })
  element.addEventListener('pointermove', hand.move, { signal })
  element.addEventListener('pointerup', hand.up, { signal })
  element.addEventListener('pointercancel', hand.cancel, { signal })
  element.addEventListener('touchend', hand.touchEnd, { signal, passive: false })
  element.addEventListener('pointerleave', hand.leave, { signal })
  element.addEventListener('contextmenu', hand.menu, { signal })
  element.addEventListener('wheel', (event) => turnWheel(event, element, latest.current.view), {
    signal,
    passive: false,
  })
  window.addEventListener('keydown', (event) => takeBackOnEscape(event, hand), { signal, capture: true })
  return () => {
    hand.cancel()
    ended.abort()
  }
}

function createHand(element: HTMLElement, latest: RefObject<Listening>) {
  let hand: Hand = { kind: 'idle' }
  let held = 0
  const quiet = quietTouch()
  const touches = new Map<number, Place>()
  const nextFrame = oncePerFrame()
  const press = (event: MouseEvent) => pressOf(event, element, latest.current.view.frame)
  const takeBack = () => {
    if (hand.kind === 'dragging' || (hand.kind === 'pressed' && hand.isOwn)) latest.current.gestures.cancel()
  }
  const openMenu = (at: Press) => {
    if (!latest.current.gestures.menu) return
    takeBack()
    hand = touches.size > 0 ? { kind: 'spent' } : { kind: 'idle' }
    if (at.isTouch) quiet.begin()
    latest.current.gestures.menu(at)
  }
  const cancel = () => {
    clearTimeout(held)
    nextFrame.drop()
    takeBack()
    hand = { kind: 'idle' }
    touches.clear()
  }
  const move = (event: PointerEvent) => {
    const now = press(event)
    if (touches.has(event.pointerId)) touches.set(event.pointerId, now.place)
    if (hand.kind === 'pressed' && movedFar(hand.start, now)) {
      clearTimeout(held)
      hand = hand.isOwn ? { kind: 'dragging' } : { kind: 'panning', last: hand.start.place }
    }
    hand = moveHand(hand, now, latest.current, touches, nextFrame)
  }
  return {
    cancel,
    move,
    down: (event: PointerEvent) => {
      if (event.button > 1) return
      element.setPointerCapture(event.pointerId)
      clearTimeout(held)
      const start = press(event)
      touches.set(event.pointerId, start.place)
      if (touches.size > 1) {
        takeBack()
        hand = touches.size === 2 ? { kind: 'pinching', last: fingers(touches) } : { kind: 'spent' }
        return
      }
      const isOwn = event.button === 0 && latest.current.gestures.down(start)
      hand = event.button === 1 ? { kind: 'panning', last: start.place } : { kind: 'pressed', start, isOwn }
      if (start.isTouch) held = window.setTimeout(() => hand.kind === 'pressed' && openMenu(start), LONG_PRESS)
    },
    up: (event: PointerEvent) => {
      if (event.button > 1) return
      clearTimeout(held)
      const now = press(event)
      nextFrame.drop()
      touches.delete(event.pointerId)
      const was = hand
      hand = touches.size > 0 ? { kind: 'spent' } : { kind: 'idle' }
      endHand(was, now, latest.current.gestures)
      // What a press has just changed is drawn before the pointer is asked about again.
      if (!now.isTouch) nextFrame.run(() => latest.current.gestures.hover(now))
    },
    touchEnd: quiet.end,
    leave: () => {
      if (hand.kind === 'idle') nextFrame.run(() => latest.current.gestures.hover(null))
    },
    menu: (event: MouseEvent) => {
      event.preventDefault()
      // A finger's long press has its own clock, and the menu key its own place in the table of keys.
      if (event.button === 2 && hand.kind !== 'spent' && touches.size === 0) openMenu(press(event))
    },
    isDragging: () => hand.kind === 'dragging',
  }
}

/** The finger that opened a menu is still down: letting go must not press what the menu puts under it. */
function quietTouch() {
  let isQuiet = false
  return {
    begin: () => {
      isQuiet = true
    },
    end: (event: TouchEvent) => {
      if (isQuiet) event.preventDefault()
      isQuiet = isQuiet && event.touches.length > 0
    },
  }
}

function takeBackOnEscape(event: KeyboardEvent, hand: ReturnType<typeof createHand>): void {
  if (event.key !== 'Escape' || !hand.isDragging()) return
  event.preventDefault()
  event.stopPropagation()
  hand.cancel()
}

function turnWheel(event: WheelEvent, element: HTMLElement, view: PlanFrame): void {
  event.preventDefault()
  const box = element.getBoundingClientRect()
  const rate = event.deltaMode === 1 ? WHEEL_RATE * 30 : WHEEL_RATE
  view.zoom(Math.exp(-event.deltaY * rate), [event.clientX - box.left, event.clientY - box.top])
}

/** What a hand that lets go leaves behind. */
function endHand(was: Hand, now: Press, gestures: Gestures): void {
  if (was.kind === 'dragging') gestures.drop(now)
  else if (was.kind === 'pressed') gestures.click(now)
}

/** Passes a move on to what the hand is doing. */
function moveHand(
  hand: Hand,
  now: Press,
  { view, gestures }: Listening,
  touches: ReadonlyMap<number, Place>,
  nextFrame: ReturnType<typeof oncePerFrame>,
): Hand {
  switch (hand.kind) {
    case 'pinching':
      return pinch(view, touches, hand.last)
    case 'panning':
      view.pan(now.place[0] - hand.last[0], now.place[1] - hand.last[1])
      return { kind: 'panning', last: now.place }
    case 'dragging':
      nextFrame.run(() => gestures.drag(now))
      return hand
    case 'idle':
      if (!now.isTouch) nextFrame.run(() => gestures.hover(now))
      return hand
    case 'pressed':
    case 'spent':
      return hand
    default:
      return unreachable(hand)
  }
}

/** Two fingers take the paper with them: closer or further about their middle, and along with it. */
function pinch(view: PlanFrame, touches: ReadonlyMap<number, Place>, last: Fingers): Hand {
  const now = fingers(touches)
  view.zoom(now.apart / Math.max(last.apart, 1), last.middle, now.middle)
  return { kind: 'pinching', last: now }
}

function fingers(touches: ReadonlyMap<number, Place>): Fingers {
  const [a, b] = [...touches.values()]
  if (!a || !b) return { apart: 1, middle: a ?? [0, 0] }
  return { apart: Math.hypot(a[0] - b[0], a[1] - b[1]), middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] }
}

/** Runs only the latest of what was asked for before the next frame. */
function oncePerFrame() {
  let wanted: (() => void) | null = null
  let handle = 0
  return {
    run: (work: () => void) => {
      if (wanted === null) {
        handle = requestAnimationFrame(() => {
          const now = wanted
          wanted = null
          now?.()
        })
      }
      wanted = work
    },
    drop: () => {
      cancelAnimationFrame(handle)
      wanted = null
    },
  }
}

import { type RefObject, useEffect, useRef } from 'react'

/**
 * A place that keeps the keyboard: when the control that had it goes, the last control before it that matches `landing`
 * takes it, else the place itself, which needs a tabIndex of −1.
 */
export function useKeepsKeyboard<E extends HTMLElement>(landing: string | null = null): RefObject<E | null> {
  const place = useRef<E>(null)
  useEffect(() => (place.current ? keepKeyboard(place.current, landing) : undefined), [landing])
  return place
}

interface Held {
  readonly control: Element
  /** Where the keyboard goes when the control goes. */
  readonly next: readonly HTMLElement[]
}

/** Returns what ends it. */
function keepKeyboard(place: HTMLElement, landing: string | null): () => void {
  let held: Held | null = null
  const came = ({ target }: FocusEvent) => {
    if (target instanceof Element) held = { control: target, next: landingsBefore(place, target, landing) }
  }
  // Asked afterwards: a control that was taken away says that it lost the keyboard as well.
  const left = () => queueMicrotask(() => held?.control.isConnected && letGo(held.control))
  const letGo = (control: Element) => {
    if (document.activeElement !== control) held = null
  }
  const watch = new MutationObserver(() => {
    if (held === null || held.control.isConnected) return
    const { next } = held
    held = null
    if (document.activeElement !== document.body) return
    const to = next.find((element) => element.isConnected) ?? place
    to.focus({ preventScroll: true })
  })
  place.addEventListener('focusin', came)
  place.addEventListener('focusout', left)
  watch.observe(place, { childList: true, subtree: true })
  return () => {
    place.removeEventListener('focusin', came)
    place.removeEventListener('focusout', left)
    watch.disconnect()
  }
}

/** Nearest first. */
function landingsBefore(place: HTMLElement, control: Element, landing: string | null): readonly HTMLElement[] {
  if (landing === null) return []
  return [...place.querySelectorAll<HTMLElement>(landing)]
    .filter((element) => element.compareDocumentPosition(control) & Node.DOCUMENT_POSITION_FOLLOWING)
    .reverse()
}

import { type RefObject, useEffect, useRef } from 'react'

/** Where the focus goes when this appears in place of what had it. */
export function useLostFocus<Kind extends HTMLElement>(): RefObject<Kind | null> {
  const place = useRef<Kind>(null)
  useEffect(() => {
    if (document.activeElement === document.body) place.current?.focus({ preventScroll: true })
  }, [])
  return place
}

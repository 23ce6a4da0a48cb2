import { type RefObject, useRef, useState } from 'react'

/** The row that picks several surfaces one by one: it stays open while the bench changes around it. */
export interface Several {
  readonly isOpen: boolean
  readonly toggle: () => void
  /** The surface whose switch gets the focus back when the bench has changed; null: none. */
  readonly last: RefObject<string | null>
}

export function useSeveral(): Several {
  const [isOpen, setOpen] = useState(false)
  const last = useRef<string | null>(null)
  return { isOpen, toggle: () => setOpen(!isOpen), last }
}

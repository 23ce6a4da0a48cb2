import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/** The width an element was given, CSS px, so that a chart's text keeps its size whatever the chart's. */
export function useWidth<Kind extends HTMLElement>(first: number): readonly [RefObject<Kind | null>, number] {
  const ref = useRef<Kind>(null)
  const [width, setWidth] = useState(first)
  useLayoutEffect(() => {
    const element = ref.current
    if (!element) return
    const observer = new ResizeObserver(([entry]) => {
      const next = Math.round(entry?.contentRect.width ?? 0)
      if (next > 0) setWidth(next)
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return [ref, width]
}

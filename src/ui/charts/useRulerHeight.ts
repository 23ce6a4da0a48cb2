import { type RefObject, useLayoutEffect, useState } from 'react'
import { SECTION_HEIGHT } from '#ui/panels/bench/SectionView.tsx'

/** Head and controls of the bench, and the air round them. */
const REST = 84
const LEAST = 128
const MOST = 300
/** Where the bench is as tall as what it holds. */
const USUAL = 190

/**
 * How tall the depth ruler may be so that ruler and section are both in sight.
 * @param inside  an element in the bench, whose place on the page has a height of its own
 */
export function useRulerHeight(inside: RefObject<HTMLElement | null>, folded: boolean): number {
  const [height, setHeight] = useState(USUAL)
  useLayoutEffect(() => {
    const place = inside.current?.closest('.bench')?.parentElement
    if (!place || folded) {
      setHeight(USUAL)
      return undefined
    }
    const observer = new ResizeObserver(() => {
      setHeight(Math.max(LEAST, Math.min(MOST, place.clientHeight - REST - SECTION_HEIGHT)))
    })
    observer.observe(place)
    return () => observer.disconnect()
  }, [inside, folded])
  return height
}

import { type RefObject, useEffect, useRef } from 'react'
import { RoomBench } from '#ui/panels/bench/RoomBench.tsx'
import { SurfaceBench } from '#ui/panels/bench/SurfaceBench.tsx'
import { useThing } from '#ui/panels/bench/tables/useThings.ts'
import { ThingBench } from '#ui/panels/bench/thing/ThingBench.tsx'
import { useSelected } from '#ui/panels/bench/useBench.ts'
import { useSeveral } from '#ui/panels/bench/useSeveral.ts'
import { useView } from '#ui/session.ts'

/** A verb that changes what the bench shows goes with it: the keyboard then goes on from the bench's beginning. */
function useKeptFocus(section: RefObject<HTMLElement | null>, shown: string): void {
  const former = useRef(shown)
  useEffect(() => {
    if (former.current !== shown && document.activeElement === document.body) {
      section.current?.focus({ preventScroll: true })
    }
    former.current = shown
  }, [section, shown])
}

/** What is selected: surfaces and what else they could be, one thing and all its numbers, or the whole room. */
export function Bench() {
  const [first, ...others] = useSelected()
  const several = useSeveral()
  const thing = useThing()
  const isListed = useView((view) => view.thing !== null && view.thing === view.listedThing)
  const shown = first ? 'surfaces' : thing && !isListed ? `${thing.kind} ${thing.id}` : 'room'
  const section = useRef<HTMLElement>(null)
  useKeptFocus(section, shown)
  return (
    <section aria-label="Bench" className="bench" ref={section} tabIndex={-1}>
      {first ? (
        <SurfaceBench surfaces={[first, ...others]} several={several} />
      ) : thing && !isListed ? (
        <ThingBench key={`${thing.kind} ${thing.id}`} thing={thing} />
      ) : (
        <RoomBench several={several} />
      )}
    </section>
  )
}

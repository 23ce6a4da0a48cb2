import { RoomBench } from '#ui/panels/bench/RoomBench.tsx'
import { SurfaceBench } from '#ui/panels/bench/SurfaceBench.tsx'
import { useSelected } from '#ui/panels/bench/useBench.ts'
import { useSeveral } from '#ui/panels/bench/useSeveral.ts'

/** What the selected thing is made of and what else it could be; with nothing selected, the whole room. */
export function Bench() {
  const [first, ...others] = useSelected()
  const several = useSeveral()
  return (
    <section aria-label="Bench" className="bench">
      {first ? <SurfaceBench surfaces={[first, ...others]} several={several} /> : <RoomBench several={several} />}
    </section>
  )
}

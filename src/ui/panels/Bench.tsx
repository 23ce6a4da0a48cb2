import { RoomBench } from '#ui/panels/bench/RoomBench.tsx'
import { SurfaceBench } from '#ui/panels/bench/SurfaceBench.tsx'
import { useSelected } from '#ui/panels/bench/useBench.ts'

/** What the selected thing is made of and what else it could be; with nothing selected, the whole room. */
export function Bench() {
  const [first, ...others] = useSelected()
  return (
    <section aria-label="Bench" className="bench">
      {first ? <SurfaceBench surfaces={[first, ...others]} /> : <RoomBench />}
    </section>
  )
}

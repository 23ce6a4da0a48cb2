import { liningRemovalCautions } from '#analysis/cautions/lining.ts'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { CautionItem } from '#ui/panels/ledger/quietLines.tsx'

/** What must be settled before a lining comes off: always in full, as soon as it is chosen. */
export function LiningCautions({ bench }: { readonly bench: BenchState }) {
  const removed = bench.surfaces.filter(({ facts }) => facts.lining !== null)
  if (removed.length === 0) return null
  return (
    <div className="lining-cautions" role="status">
      <ul className="cautions">
        {liningRemovalCautions(removed).map((caution) => (
          <CautionItem key={caution.code} caution={caution} />
        ))}
      </ul>
    </div>
  )
}

import { liningRemovalCautions } from '#analysis/cautions/lining.ts'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { CautionItem } from '#ui/panels/ledger/quietLines.tsx'

interface Props {
  readonly bench: BenchState
  /** True: in full here; false: a line that leads to them, as they always stand in full in the ledger. */
  readonly open: boolean
  readonly onOpen: () => void
}

/** What must be settled before a lining comes off: in full as soon as it is chosen. */
export function LiningCautions({ bench, open, onOpen }: Props) {
  const removed = bench.surfaces.filter(({ facts }) => facts.lining !== null)
  if (removed.length === 0) return null
  if (!open) {
    return (
      <p className="bench-said">
        <span aria-hidden="true" className="warn-sign" />
        The lining comes off: what fire, bracing, services, asbestos and lead ask stands in full in the ledger.{' '}
        <button type="button" className="row-button" onClick={onOpen}>
          Show it here
        </button>
      </p>
    )
  }
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

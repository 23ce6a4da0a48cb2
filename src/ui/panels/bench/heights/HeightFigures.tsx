import { heightRows } from '#ui/panels/ledger/heightRows.ts'
import { DetailRows } from '#ui/panels/ledger/LedgerLine.tsx'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useShownProject } from '#ui/session.ts'

/** What the heights come to under the scheme on the page. */
export function HeightFigures() {
  const { units } = useShownProject()
  const { result } = useLedger()
  if (!result) return null
  return (
    <div className="heights-figures">
      <h3 className="curve-title">What is left of them</h3>
      <DetailRows caption="Clear heights" rows={heightRows(result, units)} />
    </div>
  )
}

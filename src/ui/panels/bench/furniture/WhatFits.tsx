import { useMemo } from 'react'
import { largestCircleAcross } from '#analysis/largestCircle.ts'
import { narrowestWidth } from '#geometry/narrowest.ts'
import { bothHeights } from '#ui/panels/ledger/heightRows.ts'
import { useAnalysis, useSession, useShownProject, useView } from '#ui/session.ts'

/** On request: the largest circle that fits and the narrowest clear width, in numbers here and drawn on the plan. */
export function WhatFits() {
  const { view } = useSession()
  const shows = useView((state) => state.showsFit)
  return (
    <div className="what-fits">
      <button
        type="button"
        className="row-button"
        aria-pressed={shows}
        onClick={() => view.setState({ showsFit: !shows })}
      >
        {shows ? 'Hide what fits' : 'Show what fits'}
      </button>
      {shows && <Figures />}
    </div>
  )
}

function Figures() {
  const analysis = useAnalysis()
  const { units } = useShownProject()
  const largest = analysis.ok ? analysis.value.clear[0] : undefined
  const narrowest = useMemo(() => (largest ? narrowestWidth(largest) : null), [largest])
  if (!analysis.ok || !largest) return <span className="bench-said">No clear floor is left.</span>
  const across = bothHeights(largestCircleAcross(analysis.value.clear), units)
  return (
    <span className="bench-said" role="status">
      Largest circle that fits: {across} across.{' '}
      {narrowest && `Narrowest clear width: ${bothHeights(narrowest.widthMm, units)}.`} Furniture is not taken off.
    </span>
  )
}

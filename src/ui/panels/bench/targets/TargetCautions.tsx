import { useMemo } from 'react'
import { targetCautions } from '#analysis/cautions/targets.ts'
import { Problems } from '#ui/panels/bench/tables/rows.tsx'
import { useAnalysis, useRoom, useScheme, useShownProject } from '#ui/session.ts'

/** What has to be read once somebody plays in this room, each in full. */
export function TargetCautions() {
  const { sources, receivers } = useShownProject()
  const room = useRoom()
  const scheme = useScheme()
  const analysed = useAnalysis()
  const texts = useMemo(() => {
    if (!analysed.ok) return []
    return targetCautions({ room, scheme, sources, receivers, result: analysed.value }).map(({ text }) => text)
  }, [room, scheme, sources, receivers, analysed])
  return <Problems texts={texts} />
}

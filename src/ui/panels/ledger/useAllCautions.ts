import { useMemo } from 'react'
import { targetCautions } from '#analysis/cautions/targets.ts'
import type { Caution, SchemeResult } from '#analysis/results.ts'
import { useRoom, useScheme, useShownProject } from '#ui/session.ts'

/** What a scheme and its targets ask to be read, what its targets ask first; null: there is no result. */
export function useAllCautions(result: SchemeResult | null): readonly Caution[] {
  const { receivers, sources } = useShownProject()
  const room = useRoom()
  const scheme = useScheme()
  return useMemo(
    () =>
      result === null ? [] : [...targetCautions({ room, scheme, result, receivers, sources }), ...result.cautions],
    [room, scheme, result, receivers, sources],
  )
}

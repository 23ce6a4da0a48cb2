import type { RulerLayout } from '#ui/charts/rulerLayout.ts'
import type { Candidate, Face } from '#ui/panels/bench/candidates.ts'

interface Props {
  readonly candidate: Candidate
  readonly layout: RulerLayout
  readonly width: number
  readonly face: Face
}

/** The build-up on the same inches as the ruler. */
export function SectionView(_: Props) {
  return null
}

import { bothLengths, list } from '#analysis/cautions/words.ts'
import corners from '#analysis/data/corners.json'
import type { Caution, CornerAsBuilt, SchemeResult } from '#analysis/results.ts'

/** One caution for all corners where a resilient lining ends against a wall that is left as it is. */
export function cornerCautions({ corners: all, surfaces }: Pick<SchemeResult, 'corners' | 'surfaces'>): Caution[] {
  const touching = all.filter(({ touchesUntreated }) => touchesUntreated)
  if (touching.length === 0) return []
  const labels = new Map(surfaces.map(({ id, label }) => [id, label]))
  const places = touching.map(({ walls }) => walls.map((id) => labels.get(id) ?? id).join(' / '))
  const text =
    `At ${places.length === 1 ? 'the corner' : 'the corners'} of ${list(places)} a resilient lining ends against a wall that is left as it is: ` +
    `its boards must stop ${bothLengths(corners.gapMm.value)} short of that wall and the joint be sealed, or the rigid contact bypasses the lining. ` +
    'The space account keeps the mitre at every corner.'
  return [{ code: 'corner-untreated', kind: 'check', text, surfaces: surfacesOf(touching) }]
}

function surfacesOf(touching: readonly CornerAsBuilt[]): readonly string[] {
  return [...new Set(touching.flatMap(({ walls }) => walls))]
}

import type { Opening } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { OpeningMade } from '#assemblies/opening.ts'

/** What fills an opening under a scheme: what the scheme puts in, else what stands there; null: nobody has said. */
export function openingMade(opening: Opening, scheme: Pick<Scheme, 'openings'>): OpeningMade | null {
  const { openings } = scheme
  const chosen = openings && Object.hasOwn(openings, opening.id) ? openings[opening.id] : undefined
  return chosen ?? opening.made ?? null
}

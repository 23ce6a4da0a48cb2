import table from '#acoustics/anchor/data/scales.json' with { type: 'json' }
import type { AnchorGroup } from '#acoustics/anchor/point.ts'

/** A place among the published build-ups of one group. */
export interface Place {
  readonly features: readonly number[]
  readonly kinds: readonly string[]
}

function kindsLikeness(a: Place, b: Place): number {
  let apart = 0
  for (let i = 0; i < a.kinds.length; i++) if (a.kinds[i] !== b.kinds[i]) apart += table.kindsApart.value
  return Math.exp(-apart / 2)
}

/** How alike two build-ups of a group are: 1 the same, 0 nothing in common. */
export function likeness(a: Place, b: Place, group: AnchorGroup): number {
  const { scales } = table.groups[group]
  let squares = 0
  for (let i = 0; i < scales.length; i++) squares += ((a.features[i]! - b.features[i]!) / scales[i]!) ** 2
  return kindsLikeness(a, b) * Math.exp(-squares / 2)
}

/**
 * Covariance of the correction at two build-ups, dB2, before the group's fitted factor: a part they share when alike,
 * a part and slopes they share by frame and link, and a part all share.
 * @source Gaussian-process regression, Rasmussen and Williams (2006), chapter 2 and section 4.2, memory; sum of parts own
 */
export function covariance(a: Place, b: Place, group: AnchorGroup): number {
  return covarianceAt(likeness(a, b, group), a, b, group)
}

/** The same where the likeness of the two is at hand. */
export function covarianceAt(alikeness: number, a: Place, b: Place, group: AnchorGroup): number {
  const { alike, sameKinds, every } = table.amplitudes
  const { slopes, middle } = table.groups[group]
  let sloped = 0
  for (let i = 0; i < slopes.length; i++) {
    sloped += slopes[i]! ** 2 * (a.features[i]! - middle[i]!) * (b.features[i]! - middle[i]!)
  }
  const kinds = kindsLikeness(a, b)
  return alike ** 2 * alikeness + (sameKinds ** 2 + sloped) * kinds + every ** 2
}

/** Closed rings in a strip's own coordinates; even-odd. */
export type LocalRings = readonly (readonly (readonly [s: number, t: number])[])[]

/**
 * Parts of a straight line that lie inside rings, as parameters along (ds, dt) from (s, t).
 * A line along an edge counts as outside or inside by the half-open rule, never half.
 */
export function clipSpans(rings: LocalRings, s: number, t: number, ds: number, dt: number): [number, number][] {
  const hits: number[] = []
  for (const ring of rings) {
    let previous = ring[ring.length - 1]
    if (previous === undefined) continue
    let sideBefore = side(previous, s, t, ds, dt)
    for (const corner of ring) {
      const sideHere = side(corner, s, t, ds, dt)
      if (sideBefore > 0 !== sideHere > 0) {
        const share = sideBefore / (sideBefore - sideHere)
        const hitS = previous[0] + (corner[0] - previous[0]) * share
        const hitT = previous[1] + (corner[1] - previous[1]) * share
        hits.push(((hitS - s) * ds + (hitT - t) * dt) / (ds * ds + dt * dt))
      }
      previous = corner
      sideBefore = sideHere
    }
  }
  hits.sort((a, b) => a - b)
  const spans: [number, number][] = []
  for (let index = 0; index + 1 < hits.length; index += 2) {
    const from = hits[index]!
    const to = hits[index + 1]!
    if (to - from > 1e-9) spans.push([from, to])
  }
  return spans
}

function side(point: readonly [number, number], s: number, t: number, ds: number, dt: number): number {
  return (point[1] - t) * ds - (point[0] - s) * dt
}

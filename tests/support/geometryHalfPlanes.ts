import type { InsetInput } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'

export interface HalfPlaneAnswer {
  readonly clearMm2: number
  /** Length of each wall's face along the clear room, mm. */
  readonly faces: readonly number[]
  /** Largest distance a face runs on beyond its corner, in units of the deeper lining there. */
  readonly farthestRunOn: number
}

/**
 * Inset of a convex room, counter-clockwise: what lies in front of every face line. Right as long as every wall keeps
 * a face and no corner is so flat that its linings end in a step. Shares no code with the overlay.
 */
export function insetByHalfPlanes({ outline, depthsMm }: InsetInput): HalfPlaneAnswer {
  const n = outline.length
  let ring: { point: Point; wall: number }[] = outline.map((point, wall) => ({ point, wall }))
  let farthestRunOn = 0
  for (let k = 0; k < n; k++) {
    const [p, q, r] = [outline[k]!, outline[(k + 1) % n]!, outline[(k + 2) % n]!]
    const [u, w] = [unit(p, q), unit(q, r)]
    const [sine, cosine] = [u[0] * w[1] - u[1] * w[0], u[0] * w[0] + u[1] * w[1]]
    const [a, b] = [depthsMm[k]!, depthsMm[(k + 1) % n]!]
    const deeper = Math.max(a, b)
    if (deeper > 0 && a !== b) {
      farthestRunOn = Math.max(farthestRunOn, (a * cosine - b) / sine / deeper, (b * cosine - a) / sine / deeper)
    }
    const front = ([x, y]: Point): number => (x - p[0]) * -u[1] + (y - p[1]) * u[0] - a
    const kept: { point: Point; wall: number }[] = []
    ring.forEach((here, at) => {
      const next = ring[(at + 1) % ring.length]!
      const [before, after] = [front(here.point), front(next.point)]
      if (before >= 0) kept.push(here)
      if (before >= 0 !== after >= 0) {
        const t = before / (before - after)
        const [hx, hy] = here.point
        const point: Point = [hx + (next.point[0] - hx) * t, hy + (next.point[1] - hy) * t]
        kept.push({ point, wall: before >= 0 ? k : here.wall })
      }
    })
    ring = kept
  }
  const faces = outline.map(() => 0)
  let doubled = 0
  ring.forEach(({ point: [ax, ay], wall }, at) => {
    const [bx, by] = ring[(at + 1) % ring.length]!.point
    faces[wall]! += Math.hypot(bx - ax, by - ay)
    doubled += ax * by - ay * bx
  })
  return { clearMm2: doubled / 2, faces, farthestRunOn }
}

function unit(a: Point, b: Point): Point {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
}

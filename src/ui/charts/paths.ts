import type { ArcMark, Place } from '#drawing/model.ts'

/** Rings as one SVG path; a ring inside another is a hole. */
export function ringsPath(rings: readonly (readonly Place[])[]): string {
  return rings.map((ring) => `M${ring.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}Z`).join('')
}

/** Open lines as one SVG path; a run is x, y, x, y ... */
export function runsPath(runs: readonly (readonly number[])[]): string {
  return runs.map(runPath).join('')
}

function runPath(run: readonly number[]): string {
  let path = ''
  for (let i = 0; i + 1 < run.length; i += 2) path += `${i === 0 ? 'M' : 'L'}${short(run[i]!)} ${short(run[i + 1]!)}`
  return path
}

/** Part of a circle, clockwise on the page. */
export function arcPath(arc: Pick<ArcMark, 'x' | 'y' | 'radius' | 'startDeg' | 'endDeg'>): string {
  const [x1, y1] = onCircle(arc, arc.startDeg)
  const [x2, y2] = onCircle(arc, arc.endDeg)
  const large = arc.endDeg - arc.startDeg > 180 ? 1 : 0
  return `M${short(x1)} ${short(y1)}A${short(arc.radius)} ${short(arc.radius)} 0 ${large} 1 ${short(x2)} ${short(y2)}`
}

function onCircle(circle: { x: number; y: number; radius: number }, degrees: number): Place {
  const angle = (degrees * Math.PI) / 180
  return [circle.x + circle.radius * Math.cos(angle), circle.y + circle.radius * Math.sin(angle)]
}

function short(value: number): number {
  return Math.round(value * 100) / 100
}

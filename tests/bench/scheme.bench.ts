import { analyseScheme } from '#analysis/analyse.ts'
import { moveCorner } from '#state/commands/outline.ts'
import { CATALOGUE, openSample } from '../support/samples.ts'

export interface BenchRow {
  readonly name: string
  readonly medianMs: number
  readonly goalMs: number | null
  readonly note?: string
}

/** A whole scheme recomputed after one corner moved: what every frame of a drag costs, drawing aside. */
export function benchScheme(): readonly BenchRow[] {
  return ['garage', 'basement'].map((name) => {
    const project = openSample(name)
    const scheme = project.schemes.at(name === 'garage' ? 3 : 0)
    if (!scheme) throw new Error('no scheme')
    const times: number[] = []
    for (let i = 0; i < 200; i += 1) {
      const moved = moveCorner('room-1', 'corner-1', -(i % 37), -(i % 29)).apply(project)
      if (!moved.ok) throw new Error(moved.error.message)
      const room = moved.value.rooms[0]
      if (!room) throw new Error('no room')
      const started = performance.now()
      analyseScheme({ room, scheme, catalogue: CATALOGUE, quality: 'plot' })
      times.push(performance.now() - started)
    }
    return { name: `recompute ${name} after a corner moved`, medianMs: median(times), goalMs: 8 }
  })
}

export function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
}

import type { Crossed } from '#analysis/paths/setting.ts'
import type { SurfaceResult } from '#analysis/results.ts'
import type { SquareMetres } from '#units/quantity.ts'

/** A surface that meets one the sound goes through, so that sound runs along it round the junction. */
export interface Adjoining {
  readonly surface: SurfaceResult
  /** Of everything that goes round, what runs along this one: 1/n of every surface it meets, over all their areas. */
  readonly fraction: number
}

/** The surfaces that meet the crossed ones at their edges and are not crossed themselves. */
export function adjoiningOf(
  surfaces: readonly SurfaceResult[],
  crossed: readonly Crossed[],
): { readonly adjoining: readonly Adjoining[]; readonly separatingM2: SquareMetres } {
  const isCrossed = new Set(crossed.map(({ surface }) => surface.id))
  const separatingM2 = crossed.reduce((sum, { grossM2 }) => sum + grossM2, 0)
  const areas = new Map<SurfaceResult, SquareMetres>()
  for (const { surface, grossM2 } of crossed) {
    const meeting = meets(surfaces, surface).filter(({ id }) => !isCrossed.has(id))
    for (const other of meeting) areas.set(other, (areas.get(other) ?? 0) + grossM2 / meeting.length)
  }
  const adjoining = [...areas].map(([surface, areaM2]) => ({ surface, fraction: areaM2 / separatingM2 }))
  return { adjoining, separatingM2 }
}

/** A wall meets its two neighbours, the ceiling and the floor; ceiling and floor meet every wall. */
function meets(surfaces: readonly SurfaceResult[], surface: SurfaceResult): readonly SurfaceResult[] {
  const walls = surfaces.filter(({ kind }) => kind === 'wall')
  if (surface.kind !== 'wall') return walls
  const at = walls.findIndex(({ id }) => id === surface.id)
  const before = walls[(at + walls.length - 1) % walls.length]
  const after = walls[(at + 1) % walls.length]
  const flat = surfaces.filter(({ kind }) => kind !== 'wall')
  return [before, after, ...flat].filter((other) => other !== undefined)
}

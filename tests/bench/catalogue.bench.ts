import type { ExistingConstruction } from '#assemblies/assembly.ts'
import { assembliesFor, builtInCatalogue } from '#assemblies/catalogue.ts'
import { combineLayers } from '#assemblies/combine.ts'
import type { BoardLayer, Layer } from '#assemblies/layer.ts'
import { predictLayers } from '#assemblies/predict.ts'
import { toLayeredSystem } from '#assemblies/system.ts'
import type { BenchRow } from './curve.bench.ts'

const WALL_ID = 'stud-2x4-board-far-side'
const LINING: BoardLayer = { kind: 'board', material: 'gypsum-regular', thicknessMm: 12.7 }
const RUNS = 101

function wall(): ExistingConstruction {
  const existing = builtInCatalogue().existing.get(WALL_ID)
  if (existing === undefined) throw new Error(`no wall ${WALL_ID}`)
  return existing
}

/** Every assembly on the wall; its lining stays where the assembly lets it, which makes three leaves of most. */
function buildUps(existing: ExistingConstruction): readonly (readonly Layer[])[] {
  return assembliesFor('wall', existing.structure, builtInCatalogue()).map(
    (assembly) => combineLayers({ existing, lining: assembly.needsBareFrame ? null : LINING, assembly }).layers,
  )
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
}

/** The whole catalogue on one wall, nothing of it kept from before: each run asks for an area never asked before. */
export function benchCatalogue(): readonly BenchRow[] {
  const existing = wall()
  const cold: number[] = []
  const known: number[] = []
  let count = 0
  for (let run = 0; run < RUNS; run++) {
    const areaM2 = 10 + run * 1e-9
    const predictAll = () => {
      const layered = buildUps(existing)
      count = layered.length
      for (const layers of layered) predictLayers(layers, 'drag', areaM2)
    }
    const started = performance.now()
    predictAll()
    const between = performance.now()
    predictAll()
    cold.push(between - started)
    known.push(performance.now() - between)
  }
  const leaves = buildUps(existing).map((layers) => {
    const system = toLayeredSystem(layers)
    return system.ok ? system.value.leaves.length : 0
  })
  const note = `${count} assemblies, ${leaves.filter((n) => n > 2).length} of them of three leaves or more`
  return [
    { name: 'whole catalogue on one wall, while dragging', medianMs: median(cold), goalMs: 20, note },
    { name: 'the same again, kept by content', medianMs: median(known), goalMs: null, note: '' },
  ]
}

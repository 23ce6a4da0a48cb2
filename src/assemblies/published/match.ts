import { type LayeredSystem, reverseSystem } from '#acoustics/layered/system.ts'
import type { Source } from '#assemblies/assembly.ts'
import type { Layer } from '#assemblies/layer.ts'
import { rowWords } from '#assemblies/published/describe.ts'
import { expressRow } from '#assemblies/published/express.ts'
import { type PublishedRow, publishedRows, sourceOf } from '#assemblies/published/rows.ts'
import { isSameBuildUp } from '#assemblies/published/same.ts'
import { toLayeredSystem } from '#assemblies/system.ts'
import type { Decibels } from '#units/quantity.ts'

/** A laboratory value in print for one build-up. */
export interface PublishedValue {
  readonly id: string
  /** As the table describes the build-up. */
  readonly description: string
  /** null: the table gives none. */
  readonly stc: Decibels | null
  readonly rw: Decibels | null
  /** Table and row, with how it was read. */
  readonly source: Source
}

/** What makes a build-up the same as a published one, for the reader. */
export const MATCH_RULE =
  'A published value stands beside a prediction when the build-up is the same from either side: the same boards layer by layer (half a millimetre, plywood as strand board), the same frame and link with spacings within 12 mm, every cavity within 5 mm and a tenth of its depth, and the same share of absorber within a tenth of the cavity. A value recalled and not read says so.'

interface Known {
  readonly row: PublishedRow
  readonly system: LayeredSystem
}

let known: ReadonlyMap<string, readonly Known[]> | undefined

/** What two build-ups must share before they are looked at closely: boards a leaf, links. */
function shapeOf({ leaves, cavities }: LayeredSystem): string {
  return [...leaves.map(({ sheets }) => sheets.length), ...cavities.map(({ link }) => link.kind)].join(' ')
}

/** Rows that can be written in our layers, from both sides, by shape; worked out once. */
function knownRows(): ReadonlyMap<string, readonly Known[]> {
  if (known !== undefined) return known
  const byShape = new Map<string, Known[]>()
  for (const one of publishedRows().flatMap(knownSystems)) {
    const shape = shapeOf(one.system)
    byShape.set(shape, [...(byShape.get(shape) ?? []), one])
  }
  known = byShape
  return byShape
}

function knownSystems(row: PublishedRow): readonly Known[] {
  const expressed = expressRow(row)
  if (!expressed.ok) return []
  return expressed.value.flatMap((layers) => {
    const system = toLayeredSystem(layers)
    return system.ok ? [system.value, reverseSystem(system.value)].map((side) => ({ row, system: side })) : []
  })
}

/** Published values for exactly this build-up, from either side; empty: none. */
export function publishedFor(layers: readonly Layer[]): readonly PublishedValue[] {
  const system = toLayeredSystem(layers)
  if (!system.ok) return []
  const alike = knownRows().get(shapeOf(system.value)) ?? []
  const rows = alike.filter((candidate) => isSameBuildUp(candidate.system, system.value)).map(({ row }) => row)
  return [...new Set(rows)].map((row) => ({
    id: row.id,
    description: rowWords(row),
    stc: row.stc ?? null,
    rw: row.rw ?? null,
    source: sourceOf(row),
  }))
}

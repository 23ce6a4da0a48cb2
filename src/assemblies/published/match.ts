import type { Source } from '#assemblies/assembly.ts'
import type { Layer } from '#assemblies/layer.ts'
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
  'Same leaves board by board, same frame, link and spacings, same cavity within 5 mm and the same share of absorber.'

/** Published values for exactly this build-up, from either side; empty: none. */
export function publishedFor(_layers: readonly Layer[]): readonly PublishedValue[] {
  return []
}

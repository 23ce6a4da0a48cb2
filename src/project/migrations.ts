/** One change of format: what a file of the version before becomes. */
export interface Migration {
  readonly to: number
  readonly why: string
  readonly up: (document: Readonly<Record<string, unknown>>) => Record<string, unknown>
}

/** In order, without gaps: MIGRATIONS[0] leads to version 2. None yet. */
export const MIGRATIONS: readonly Migration[] = []

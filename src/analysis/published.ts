import type { PublishedValue } from '#assemblies/published/match.ts'
import type { Decibels } from '#units/quantity.ts'

/** Said where a rating stands and no laboratory value in print is for exactly that build-up. */
export const NO_PUBLISHED = 'no published value for this build-up'

/** The published STC shown beside a prediction, as files and the command line give it. */
export interface PublishedStc {
  readonly stc: Decibels
  /** Table and row, and whether it was read. */
  readonly source: string
}

/** The value to show: one that was read before one from memory, then as the tables are ordered; null: none has an STC. */
export function publishedStc(values: readonly PublishedValue[]): PublishedStc | null {
  const found = readFirst(values).find(({ stc }) => stc !== null)
  return found?.stc == null ? null : { stc: found.stc, source: sourceWords(found) }
}

/** Every value with its source: "published 36 (Table 9.10.3.1.-A, row W1a; seen)", or that there is none. */
export function publishedWords(values: readonly PublishedValue[]): string {
  if (values.length === 0) return NO_PUBLISHED
  return readFirst(values)
    .map((value) => `published ${figureWords(value)} (${sourceWords(value)})`)
    .join('; ')
}

/** For a table that has its sources beneath: "published 36 (NBC-W1a)"; null: none. */
export function publishedShort(values: readonly PublishedValue[]): string | null {
  const [first] = readFirst(values)
  if (first === undefined) return null
  const more = values.length > 1 ? ` and ${values.length - 1} more` : ''
  return `published ${figureWords(first)} (${first.id}${more})`
}

/** The sources such a table owes, each once: "NBC-W1a: <table, row>; seen". */
export function publishedSources(all: readonly (readonly PublishedValue[])[]): readonly string[] {
  return [...new Set(all.flatMap((values) => values.map((value) => `${value.id}: ${sourceWords(value)}`)))]
}

/** 36; Rw 35 where the table prints no STC. */
export function figureWords({ stc, rw }: Pick<PublishedValue, 'stc' | 'rw'>): string {
  if (stc !== null) return rw === null ? String(stc) : `${stc}, Rw ${rw}`
  return rw === null ? 'without a figure' : `Rw ${rw}`
}

/** Table and row; seen, or from memory. */
export function sourceWords({ source }: Pick<PublishedValue, 'source'>): string {
  return `${source.text}; ${source.status === 'memory' ? 'from memory, not read' : source.status}`
}

function readFirst(values: readonly PublishedValue[]): readonly PublishedValue[] {
  const rank = ({ source }: PublishedValue) => (source.status === 'seen' ? 0 : 1)
  return values.toSorted((a, b) => rank(a) - rank(b))
}

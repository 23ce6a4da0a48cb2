import table from '#analysis/data/junctions.json' with { type: 'json' }
import { JUNCTION_CLASSES, type JunctionClass } from '#analysis/target.ts'
import type { Decibels } from '#units/quantity.ts'

/** What a junction class takes for granted; data/junctions.json. */
export type JunctionRule =
  | { readonly kind: 'none' }
  /** What goes through a surface comes out so much louder on site. */
  | { readonly kind: 'allowance'; readonly allowanceDb: Decibels; readonly sdDb: Decibels }
  /** Everything that goes round together, with nothing lined, is held to this STC. */
  | { readonly kind: 'limit'; readonly limitStc: Decibels; readonly sdDb: Decibels }

export interface Junction {
  readonly id: JunctionClass
  readonly name: string
  /** What is built, one sentence. */
  readonly means: string
  readonly rule: JunctionRule
  /** Where the number comes from, with its status. */
  readonly source: string
  readonly status: string
}

/** The table as it is read: a class has an allowance, a limit, or neither. */
interface Row {
  readonly name: string
  readonly means: string
  readonly source: string
  readonly status: string
  readonly allowanceDb?: Decibels
  readonly limitStc?: Decibels
  readonly sdDb?: Decibels
}

const ROWS: Readonly<Record<JunctionClass, Row>> = table.classes

function junction(id: JunctionClass): Junction {
  const { name, means, source, status, ...numbers } = ROWS[id]
  return { id, name, means, source, status, rule: ruleOf(numbers) }
}

function ruleOf({ allowanceDb, limitStc, sdDb = 0 }: Pick<Row, 'allowanceDb' | 'limitStc' | 'sdDb'>): JunctionRule {
  if (allowanceDb !== undefined) return { kind: 'allowance', allowanceDb, sdDb }
  return limitStc === undefined ? { kind: 'none' } : { kind: 'limit', limitStc, sdDb }
}

/**
 * Every junction class, from the one that claims nothing to the most solid. An allowance is of the surface and a limit is
 * not: beside a surface weaker than about the limit and 3 dB an allowance of 5 dB takes more.
 */
export const JUNCTIONS: readonly Junction[] = JUNCTION_CLASSES.map(junction)

export function junctionOf(id: JunctionClass): Junction {
  return JUNCTIONS.find((candidate) => candidate.id === id) ?? junction('none')
}

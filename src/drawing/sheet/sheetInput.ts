import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { SheetHeard } from '#drawing/sheet/heard.ts'
import type { LengthUnit } from '#units/quantity.ts'

export type PaperName = 'letter' | 'tabloid' | 'a4' | 'a3'

/** What a sheet is drawn from. */
export interface SheetInput {
  readonly projectName: string
  /** The designer's own line; empty: none. */
  readonly note: string
  readonly room: Room
  readonly result: SchemeResult
  readonly units: LengthUnit
  /** Who hears what; absent: nobody was asked. */
  readonly heard?: SheetHeard | undefined
  /** As it is to be printed; absent: the sheet carries no date. */
  readonly date?: string | undefined
  readonly paper: PaperName
  /** Absent: landscape. */
  readonly landscape?: boolean | undefined
}

/** Long and short side, mm. @source ANSI Y14.1 A and B, ISO 216, memory */
export const PAPERS: Readonly<Record<PaperName, readonly [number, number]>> = {
  letter: [279.4, 215.9],
  tabloid: [431.8, 279.4],
  a4: [297, 210],
  a3: [420, 297],
}

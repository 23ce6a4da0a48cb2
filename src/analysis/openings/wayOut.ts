import { bothLengths } from '#analysis/cautions/words.ts'
import doors from '#analysis/data/doors.json'
import type { Note } from '#analysis/results.ts'
import type { Opening } from '#analysis/room.ts'
import { formatArea } from '#units/format.ts'
import type { Millimetres } from '#units/quantity.ts'

/** What linings and floor leave of an opening. */
export interface Left {
  readonly clearWidthMm: Millimetres
  readonly clearHeightMm: Millimetres
  /** Sill over the new floor. */
  readonly sillMm: Millimetres
}

const ASK = 'ask your building department.'

/** Whether somebody may have to leave through it: any door, and a window low enough to climb through. */
export function isWayOut({ kind }: Opening, sillMm: Millimetres): boolean {
  return kind === 'door' || (kind === 'window' && sillMm <= doors.escapeSillMm.value + 0.5)
}

/** Sentences where the scheme takes a way out below what codes commonly ask. */
export function wayOutProblems(opening: Opening, left: Left): readonly Note[] {
  if (!isWayOut(opening, left.sillMm)) return []
  return opening.kind === 'door' ? doorLeft(opening, left) : windowLeft(opening, left)
}

function doorLeft(opening: Opening, { clearWidthMm, clearHeightMm }: Left): readonly Note[] {
  const notes: Note[] = []
  const width = doors.doorClearWidthMm.value
  const height = doors.doorClearHeightMm.value
  if (clearWidthMm < opening.widthMm - 0.5 && clearWidthMm < width - 0.5) {
    const text = `${opening.name} keeps a clear width of ${bothLengths(clearWidthMm)}, less than the ${bothLengths(width)} many codes ask of the way out: ${ASK}`
    notes.push({ code: 'narrow-way-out', text })
  }
  if (clearHeightMm < opening.sillMm + opening.heightMm - 0.5 && clearHeightMm < height - 0.5) {
    const text = `${opening.name} keeps a clear height of ${bothLengths(clearHeightMm)}, less than the ${bothLengths(height)} many codes ask of the way out: ${ASK}`
    notes.push({ code: 'low-way-out', text })
  }
  return notes
}

function windowLeft(opening: Opening, { clearWidthMm }: Left): readonly Note[] {
  const high = Math.max(0, opening.heightMm - opening.revealLiningMm)
  const isLess = clearWidthMm < opening.widthMm - 0.5 || high < opening.heightMm - 0.5
  const areaM2 = (clearWidthMm * high) / 1e6
  const isEnough =
    clearWidthMm >= doors.escapeWidthMm.value - 0.5 &&
    high >= doors.escapeHeightMm.value - 0.5 &&
    areaM2 >= doors.escapeAreaM2.value - 5e-4
  if (!isLess || isEnough) return []
  const asked = `${bothLengths(doors.escapeWidthMm.value)} wide, ${bothLengths(doors.escapeHeightMm.value)} high and ${formatArea(doors.escapeAreaM2.value, 'mm')} (${formatArea(doors.escapeAreaM2.value, 'ft-in')}) in all`
  const text = `${opening.name}: the linings leave ${bothLengths(clearWidthMm)} by ${bothLengths(high)}, less than the ${asked} many codes ask of a window people escape through: ${ASK}`
  return [{ code: 'small-escape-window', text }]
}

import { openingMade } from '#analysis/openings/made.ts'
import { soundOfOpening } from '#analysis/openings/sound.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Opening, Room } from '#analysis/room.ts'
import { madeWords } from '#assemblies/openingMadeWords.ts'
import type { OpeningSound } from '#assemblies/openingSound.ts'
import type { SheetHeard } from '#drawing/sheet/heard.ts'

/** What fills an opening, and its rating with its range and what is in print; null: nobody has said and nobody hears. */
export function openingFills(
  { scheme, catalogue, receivers }: SheetHeard,
  room: Room,
  result: SchemeResult,
): (opening: Opening) => string | null {
  return (opening) => {
    const made = openingMade(opening, scheme)
    if (made === null && receivers.length === 0) return null
    const words = `In it: ${madeWords(made, catalogue)}`
    if (made === null) return words
    const sound = soundOfOpening({ room, scheme, result, catalogue }, opening)
    return sound.ok ? `${words}; ${ratingWords(sound.value)}` : `${words}. ${sound.error}`
  }
}

function ratingWords({ stc, likely, basis, publishedWords }: OpeningSound): string {
  if (stc === null || likely === null) return 'lets through all that meets it'
  const printed = publishedWords === null ? '' : `; published ${publishedWords}`
  return `STC ${stc}, likely ${likely[0]}–${likely[1]}, ${basis}${printed}`
}

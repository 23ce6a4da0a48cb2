import { openingMade } from '#analysis/openings/made.ts'
import { soundOfOpening } from '#analysis/openings/sound.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Opening, Room } from '#analysis/room.ts'
import { madeWords } from '#assemblies/openingMadeWords.ts'
import type { OpeningSound } from '#assemblies/openingSound.ts'
import type { SheetHeard } from '#drawing/sheet/heard.ts'

/** What fills an opening, and its rating with its range; null: nobody has said and nobody hears. */
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

function ratingWords({ stc, likely, basis }: OpeningSound): string {
  if (stc === null || likely === null) return 'lets through all that meets it'
  return `STC ${stc}, likely ${likely[0]}–${likely[1]}, ${basis}`
}

/** What is in print for openings as they are filled, each with its source. */
export function openingSources({ scheme, catalogue }: SheetHeard, room: Room, result: SchemeResult): readonly string[] {
  return room.openings.flatMap((opening) => {
    if (openingMade(opening, scheme) === null) return []
    const sound = soundOfOpening({ room, scheme, result, catalogue }, opening)
    return sound.ok && sound.value.publishedWords !== null
      ? [`${opening.name}: published ${sound.value.publishedWords}.`]
      : []
  })
}

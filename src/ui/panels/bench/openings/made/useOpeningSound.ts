import { openingMade } from '#analysis/openings/made.ts'
import { type OpeningSurroundings, soundOfOpening } from '#analysis/openings/sound.ts'
import type { Opening } from '#analysis/room.ts'
import type { OpeningMade } from '#assemblies/opening.ts'
import type { OpeningSound } from '#assemblies/openingSound.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useCatalogue, useRoom, useScheme } from '#ui/session.ts'
import type { Result } from '#units/result.ts'

/** What an opening lets through in the shown scheme. */
export interface ShownSound {
  readonly made: OpeningMade | null
  /** The sentence says what is missing. */
  readonly sound: Result<OpeningSound, string>
}

/** The same question of any opening of the shown room and scheme; null while there is no result to ask it of. */
export function useOpeningSounds(): ((opening: Opening) => ShownSound) | null {
  const room = useRoom()
  const scheme = useScheme()
  const catalogue = useCatalogue()
  const { result } = useLedger()
  if (!result) return null
  const around: OpeningSurroundings = { room, scheme, result, catalogue }
  return (opening) => ({ made: openingMade(opening, scheme), sound: soundOfOpening(around, opening) })
}

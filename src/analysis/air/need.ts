import { neededAirflow } from '#acoustics/airflow.ts'
import airflow from '#acoustics/data/airflow.json' with { type: 'json' }
import { bothAirflows, bothFloorAreas } from '#analysis/air/words.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { SquareMetres } from '#units/quantity.ts'

/** Outdoor air the people in a room need. */
export interface AirNeed {
  /** null: nobody has said. */
  readonly people: number | null
  /** Clear floor under the scheme. */
  readonly areaM2: SquareMetres
  /** null: the number of people is not known. */
  readonly lPerS: number | null
}

/** What air a room needs for its people and its clear floor. @source acoustics/data/airflow.json, seen */
export function airNeed({ people }: Room, { ledger }: Pick<SchemeResult, 'ledger'>): AirNeed {
  const areaM2 = ledger.floorAreaM2.clear
  return { people: people ?? null, areaM2, lPerS: people === undefined ? null : neededAirflow(people, areaM2) }
}

/** "4 people and 20.90 m² (225.0 ft²) of clear floor need 26.3 L/s (56 cfm) of outdoor air". */
export function needWords({ people, areaM2, lPerS }: AirNeed): string {
  const { perPersonLPerS, perM2LPerS } = airflow.need
  if (lPerS === null) {
    return `each person needs ${bothAirflows(perPersonLPerS)} of outdoor air, and the floor ${bothAirflows(perM2LPerS * areaM2)} more`
  }
  const who = people === 1 ? '1 person' : `${people} people`
  return `${who} and ${bothFloorAreas(areaM2)} of clear floor need ${bothAirflows(lPerS)} of outdoor air`
}

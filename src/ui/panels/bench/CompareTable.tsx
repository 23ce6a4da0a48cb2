import { costIndex } from '#analysis/cost.ts'
import type { SchemeResult, SurfaceRating, SurfaceResult } from '#analysis/results.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import { SchemeSign } from '#ui/charts/SchemeSign.tsx'
import type { ComparedScheme } from '#ui/panels/bench/Compare.tsx'
import {
  bothAreas,
  bothVolumes,
  listOf,
  NOT_IN_FIGURE,
  otherUnit,
  printedNote,
  schemeTitle,
  stcInTable,
} from '#ui/panels/words.ts'
import { useCatalogue, useSession } from '#ui/session.ts'
import { formatLength, formatMass, formatPercent } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface Props {
  readonly compared: readonly ComparedScheme[]
  readonly units: LengthUnit
}

const HEADS = [
  'Floor kept',
  '%',
  'Lowest clear height',
  'Volume kept',
  'Lowest rated surface',
  'Added weight',
  'Cost index',
]

/** The schemes' numbers, one scheme a row. */
export function CompareTable({ compared, units }: Props) {
  const { view } = useSession()
  const catalogue = useCatalogue()
  return (
    <div className="table-place">
      <table className="figures cards">
        <caption className="visually-hidden">Schemes compared</caption>
        <thead>
          <tr>
            <th scope="col">Scheme</th>
            {HEADS.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {compared.map((entry, index) => (
            <tr key={entry.scheme.id}>
              <th scope="row">
                <button
                  type="button"
                  className="row-button"
                  onClick={() => view.setState({ schemeId: entry.scheme.id })}
                >
                  <svg className="scheme-key" width="16" height="14" viewBox="-8 -7 16 14" aria-hidden="true">
                    <SchemeSign index={index} />
                  </svg>{' '}
                  {schemeTitle(entry.scheme.name, entry.letter)}
                </button>
              </th>
              {cells(entry, units, catalogue).map((cell, column) => (
                <td key={HEADS[column]} className="number" data-label={HEADS[column]}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="table-note">
        Ratings are of one surface alone; {NOT_IN_FIGURE}. {printedNote(compared.map(lowestRating))} The cost index is
        cost band (1 to 5) times area in m², no price.
      </p>
    </div>
  )
}

function cells(entry: ComparedScheme, units: LengthUnit, catalogue: Catalogue): readonly string[] {
  const { result, scheme } = entry
  if (result === null) return HEADS.map(() => 'unknown')
  const { ledger } = result
  const height = ledger.clearHeightMm.lowest
  const isLeft = ledger.parts > 0
  return [
    bothAreas(ledger.floorAreaM2.clear, units),
    formatPercent(ledger.keptPercent),
    isLeft ? `${formatLength(height, units)} · ${formatLength(height, otherUnit(units))}` : 'none',
    isLeft ? bothVolumes(ledger.volumeM3.clear, units) : 'none',
    lowestWords(result),
    formatMass(ledger.addedMassKg, units),
    String(Math.round(costIndex(result, scheme, catalogue))),
  ]
}

/** STC 52, likely 47-57 at Wall 3; with what has no rating named. */
function lowestWords(result: SchemeResult): string {
  const lowest = lowestSurfaces(result)
  const rating = lowest[0]?.rating
  return rating ? `${stcInTable(rating)} at ${listOf(lowest.map(({ label }) => label))}` : 'not rated'
}

function lowestRating({ result }: ComparedScheme): SurfaceRating | null {
  return (result && lowestSurfaces(result)[0]?.rating) ?? null
}

function lowestSurfaces(result: SchemeResult): readonly SurfaceResult[] {
  return result.surfaces.filter(({ rating }) => rating !== null && rating.stc === result.lowestRated?.stc)
}

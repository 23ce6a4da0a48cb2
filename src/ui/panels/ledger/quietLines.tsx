import { publishedShort } from '#analysis/published.ts'
import type { Caution, SchemeResult, SurfaceResult } from '#analysis/results.ts'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { DetailRows, LedgerLine } from '#ui/panels/ledger/LedgerLine.tsx'
import type { LineProps } from '#ui/panels/ledger/spaceLines.tsx'
import {
  capital,
  listOf,
  NOT_IN_FIGURE,
  printedNote,
  rwWords,
  signed,
  stcWords,
  whyNotRated,
} from '#ui/panels/words.ts'
import { useSession } from '#ui/session.ts'
import { formatMass, formatSurfaceMass } from '#units/format.ts'

/** The lowest rated surface: never a promise for the room, whose doors and ducts are not in it. */
export function QuietLine({ result, before, cause }: LineProps) {
  const lowest = lowestSurfaces(result)
  const rating = lowest[0]?.rating ?? null
  const unrated = result.surfaces.filter((surface) => surface.rating === null).map(({ label }) => label)
  const unratedWords = unrated.length > 0 ? ` · ${listOf(unrated)} not rated` : ''
  const change =
    before?.lowestRated && result.lowestRated
      ? signed(
          result.lowestRated.stc - before.lowestRated.stc,
          (size) => `${Math.round(size)} in the middle of its range`,
        )
      : null
  return (
    <LedgerLine
      name="Quiet, lowest rated surface"
      figure={rating === null ? 'Not known' : stcWords(rating)}
      second={lowest.length > 0 ? `at ${listOf(lowest.map(({ label }) => label))}` : undefined}
      from={`${NOT_IN_FIGURE}${unratedWords}`}
      change={change}
      cause={cause}
      below={<SetTarget />}
    >
      <SurfaceRatings result={result} />
    </LedgerLine>
  )
}

/** The way to a figure for the whole room: somebody who must not hear it. */
function SetTarget() {
  const { view } = useSession()
  return (
    <button
      type="button"
      className="ledger-try"
      onClick={() => view.setState({ ...NOTHING_SELECTED, roomView: 'targets' })}
    >
      Set who must not hear it
    </button>
  )
}

/** Every surface by its own rating, weakest first, with what such a rating leaves out. */
export function SurfaceRatings({ result }: Pick<LineProps, 'result'>) {
  return (
    <>
      <table className="detail-rows">
        <caption className="visually-hidden">Rating of each surface, weakest first</caption>
        <tbody>
          {weakestFirst(result.surfaces).map((surface) => (
            <SurfaceRow key={surface.id} surface={surface} />
          ))}
        </tbody>
      </table>
      <p className="detail-note">
        Each is of one surface alone. {printedNote(result.surfaces.map(({ rating }) => rating))} Structure-borne sound
        and bass below 50 Hz are not in these figures.
      </p>
    </>
  )
}

function SurfaceRow({ surface }: { readonly surface: SurfaceResult }) {
  const why = whyNotRated(surface)
  const printed = surface.rating && publishedShort(surface.rating.published)
  return (
    <>
      <tr>
        <th scope="row">{surface.label}</th>
        <td>{stcWords(surface.rating)}</td>
      </tr>
      <tr className="detail-under">
        <td colSpan={2}>
          {capital(surface.assemblyName)} · {why ?? rwWords(surface.rating)}
          {printed && ` · ${printed}`}
        </td>
      </tr>
    </>
  )
}

function lowestSurfaces(result: SchemeResult): readonly SurfaceResult[] {
  const stc = result.lowestRated?.stc
  return stc === undefined ? [] : result.surfaces.filter((surface) => surface.rating?.stc === stc)
}

function weakestFirst(surfaces: readonly SurfaceResult[]): readonly SurfaceResult[] {
  const rank = (surface: SurfaceResult) => surface.rating?.stc ?? Number.POSITIVE_INFINITY
  return [...surfaces].sort((a, b) => (rank(a) < rank(b) ? -1 : rank(a) > rank(b) ? 1 : 0))
}

export function WeightLine({ result, before, cause, unit }: LineProps) {
  const { addedMassKg, onJoistsKgM2 } = result.ledger
  const text = (kg: number) => formatMass(kg, unit)
  const other = unit === 'mm' ? 'ft-in' : 'mm'
  return (
    <LedgerLine
      name="Added weight"
      aside={onJoistsKgM2 > 0 ? `${formatSurfaceMass(onJoistsKgM2, unit)} on joists` : 'none on joists'}
      figure={text(addedMassKg)}
      second={formatMass(addedMassKg, other)}
      from={
        onJoistsKgM2 > 0
          ? `${formatSurfaceMass(onJoistsKgM2, unit)} · ${formatSurfaceMass(onJoistsKgM2, other)} hangs on the existing joists`
          : 'nothing new hangs on the existing joists'
      }
      change={before && signed(addedMassKg - before.ledger.addedMassKg, text)}
      cause={cause}
    >
      <DetailRows
        caption="Weight of each surface"
        rows={result.surfaces.map(
          (surface) =>
            [
              surface.label,
              `${text(surface.addedMassKg)} · ${formatSurfaceMass(surface.addedMassKgM2, unit)}`,
            ] as const,
        )}
      />
    </LedgerLine>
  )
}

interface CautionsProps {
  readonly cautions: readonly Caution[]
  /** Sentences of what does not fit as drawn: they stand in full too. */
  readonly clashes: ReadonlySet<string>
}

/** Life safety and what does not fit as drawn always in full; other checks open downward. */
export function Cautions({ cautions, clashes }: CautionsProps) {
  const inFull = (caution: Caution) => caution.kind === 'life-safety' || clashes.has(caution.text)
  const shown = cautions.filter(inFull)
  const checks = cautions.filter((caution) => !inFull(caution))
  return (
    <div className="ledger-cautions">
      <h3 className="ledger-name">Cautions</h3>
      {cautions.length === 0 && (
        <p className="ledger-from">Nothing is built yet, so there is nothing to caution about here.</p>
      )}
      <CautionList cautions={shown} />
      {checks.length > 0 && (
        <details className="other-checks">
          <summary>Other checks</summary>
          <CautionList cautions={checks} />
        </details>
      )}
    </div>
  )
}

/** What openings and furniture meet as drawn, sentence by sentence. */
export function clashesOf({
  openings,
  furniture,
  boxes,
}: Pick<SchemeResult, 'openings' | 'furniture' | 'boxes'>): ReadonlySet<string> {
  return new Set([...openings, ...furniture, ...boxes].flatMap(({ problems }) => problems.map(({ text }) => text)))
}

function CautionList({ cautions }: Pick<CautionsProps, 'cautions'>) {
  if (cautions.length === 0) return null
  return (
    <ul className="cautions">
      {cautions.map((caution) => (
        <CautionItem key={caution.code + caution.text} caution={caution} />
      ))}
    </ul>
  )
}

export function CautionItem({ caution }: { readonly caution: Caution }) {
  return (
    <li data-caution={caution.code}>
      <span aria-hidden="true" className={caution.kind === 'life-safety' ? 'warn-sign' : 'check-sign'} />
      <span>{caution.text}</span>
    </li>
  )
}

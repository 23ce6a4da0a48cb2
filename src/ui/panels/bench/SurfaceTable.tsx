import { publishedShort } from '#analysis/published.ts'
import type { SurfaceResult } from '#analysis/results.ts'
import { type Choice, choiceFor } from '#analysis/scheme.ts'
import { AS_IS } from '#assemblies/assembly.ts'
import { isOwn } from '#assemblies/ownAssembly.ts'
import { assignAssembly } from '#state/commands/surfaces.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { type BenchSurface, benchSurfaces, sharedAssemblies } from '#ui/panels/bench/candidates.ts'
import { useRecordedScheme } from '#ui/panels/bench/useBench.ts'
import { wallLength } from '#ui/panels/bench/wallLength.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { farSideWords, NOT_IN_FIGURE, printedNote, rwWords, stcWords, whyNotRated } from '#ui/panels/words.ts'
import { useCatalogue, useRoom, useSession, useShownProject } from '#ui/session.ts'
import { formatArea, formatLength } from '#units/format.ts'

const HEADS = [
  'Length',
  'Existing',
  'Assembly',
  'From finished face',
  'From structure',
  'Area lost',
  'STC',
  'Rw (C; Ctr)',
]

/** Every surface in a row: what it is, what is built against it, what that takes and gives. */
export function SurfaceTable() {
  const room = useRoom()
  const { result } = useLedger()
  return (
    <div className="table-place">
      <AllWallsField />
      <table className="figures cards">
        <caption className="visually-hidden">Surfaces of the room</caption>
        <thead>
          <tr>
            <th scope="col">Surface</th>
            {HEADS.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {benchSurfaces(room).map((surface) => (
            <SurfaceRow
              key={surface.facts.id}
              surface={surface}
              result={result?.surfaces.find(({ id }) => id === surface.facts.id) ?? null}
            />
          ))}
        </tbody>
      </table>
      <p className="table-note">
        Ratings are of one surface alone; {NOT_IN_FIGURE}.{' '}
        {printedNote(result?.surfaces.map(({ rating }) => rating) ?? [])}
        {result?.surfaces.map((surface) => {
          const why = whyNotRated(surface)
          return why === null ? null : <span key={surface.id}> {why}</span>
        })}
      </p>
    </div>
  )
}

interface RowProps {
  readonly surface: BenchSurface
  readonly result: SurfaceResult | null
}

function SurfaceRow({ surface, result }: RowProps) {
  const { view } = useSession()
  const catalogue = useCatalogue()
  const { units } = useShownProject()
  const room = useRoom()
  const { facts, kind, label } = surface
  const printed = result?.rating ? publishedShort(result.rating.published) : null
  return (
    <tr>
      <th scope="row">
        <button
          type="button"
          className="row-button"
          onClick={() => view.setState({ surfaceIds: [facts.id], cornerId: null, thing: null })}
        >
          {label}
        </button>
      </th>
      <td className="number" data-label="Length">
        {kind === 'wall' ? formatLength(wallLength(room, facts.id), units) : ''}
      </td>
      <td className="words" data-label="Existing">
        {catalogue.existing.get(facts.existing)?.name ?? facts.existing}, to {farSideWords(facts.farSide)}
      </td>
      <td data-label="Assembly">
        <RowAssembly surface={surface} />
      </td>
      <td className="number" data-label="From finished face">
        {result ? formatLength(result.depthFromFaceMm, units) : 'unknown'}
      </td>
      <td className="number" data-label="From structure">
        {result ? formatLength(result.depthFromStructureMm, units) : 'unknown'}
      </td>
      <td className="number" data-label="Area lost">
        {result && kind === 'wall' ? formatArea(result.areaLostM2, units) : ''}
      </td>
      <td className="number" data-label="STC">
        {result ? stcWords(result.rating) : 'unknown'}
        {printed && <span className="under">{printed}</span>}
      </td>
      <td className="number" data-label="Rw (C; Ctr)">
        {result?.rating ? rwWords(result.rating).replace('Rw ', '') : ''}
      </td>
    </tr>
  )
}

function RowAssembly({ surface }: { readonly surface: BenchSurface }) {
  const { document } = useSession()
  const catalogue = useCatalogue()
  const scheme = useRecordedScheme()
  const choice = choiceFor(scheme, surface.facts.id)
  const allowed = sharedAssemblies([surface], catalogue)
  const options = assemblyOptions(
    allowed.map(({ id, name }) => ({ value: id, text: isOwn(catalogue, id) ? `${name} · own` : name })),
    choice,
    catalogue.assemblies.get(choice.assembly)?.name,
  )
  return (
    <>
      <ChoiceField
        name={`assembly-${surface.facts.id}`}
        label={`Assembly of ${surface.label}`}
        quiet
        value={choice.assembly}
        options={options}
        onChoose={(id) =>
          document.run(assignAssembly(scheme.id, [surface.facts.id], catalogue.assemblies.get(id) ?? null))
        }
      />
      {choice.removeLining && surface.facts.lining !== null && <span className="under">lining removed</span>}
    </>
  )
}

function assemblyOptions(
  allowed: readonly { value: string; text: string }[],
  choice: Choice,
  ownName: string | undefined,
) {
  const options = [{ value: AS_IS, text: 'As it stands' }, ...allowed]
  if (options.some(({ value }) => value === choice.assembly)) return options
  return [...options, { value: choice.assembly, text: ownName ?? choice.assembly }]
}

/** One assembly for all walls at once: one command, one undo step. */
function AllWallsField() {
  const { document } = useSession()
  const catalogue = useCatalogue()
  const room = useRoom()
  const scheme = useRecordedScheme()
  const walls = benchSurfaces(room).filter(({ kind }) => kind === 'wall')
  const ids = walls.map(({ facts }) => facts.id)
  const first = choiceFor(scheme, ids[0] ?? '').assembly
  const alike = ids.every((id) => choiceFor(scheme, id).assembly === first)
  const allowed = sharedAssemblies(walls, catalogue).map(({ id, name }) => ({
    value: id,
    text: isOwn(catalogue, id) ? `${name} · own` : name,
  }))
  const own = alike ? { assembly: first, removeLining: false } : { assembly: AS_IS, removeLining: false }
  return (
    <ChoiceField
      name="assembly-all-walls"
      label="Make all walls"
      value={alike ? first : null}
      options={assemblyOptions(allowed, own, catalogue.assemblies.get(first)?.name)}
      onChoose={(id) => document.run(assignAssembly(scheme.id, ids, catalogue.assemblies.get(id) ?? null))}
    />
  )
}

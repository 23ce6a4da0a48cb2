import { gapCap, holeCap } from '#analysis/air/leakCaps.ts'
import { leaksOf } from '#analysis/paths/leakPaths.ts'
import type { SchemeResult, SurfaceResult } from '#analysis/results.ts'
import type { Hole, Leaks } from '#analysis/scheme.ts'
import { setLeaks } from '#state/commands/air.ts'
import { TYPED_GAP_MM, usualHole } from '#state/usualAir.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { HoleFields } from '#ui/panels/bench/air/HoleFields.tsx'
import { capWords } from '#ui/panels/bench/air/leakWords.ts'
import { Heads } from '#ui/panels/bench/tables/rows.tsx'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { useRecordedScheme, useRun } from '#ui/panels/bench/useBench.ts'
import { useRoom, useShownProject } from '#ui/session.ts'
import { useKeepsKeyboard } from '#ui/useKeepsKeyboard.ts'

const HEADS = ['Surface', 'Gap at its edges', 'Its width', 'Caps it at 500 Hz', 'Holes right through']

/** Where each surface lets air through: the gap at its edges and holes, and what each does. */
export function LeakTable({ result }: { readonly result: SchemeResult }) {
  const scheme = useRecordedScheme()
  const place = useKeepsKeyboard<HTMLElement>('.row-verbs button')
  return (
    <section ref={place} tabIndex={-1} className="air-part" aria-label="Leaks by surface">
      <h3>Leaks by surface</h3>
      <table className="figures cards wide-table leak-table">
        <caption>In {scheme.name} alone. A gap or hole of a stated size is counted as open right through.</caption>
        <Heads heads={HEADS} />
        <tbody>
          {result.surfaces.map((surface) => (
            <LeakRow key={surface.id} surface={surface} />
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** What a scheme says of one surface's leaks, and how to say it anew. */
function useLeaks(surfaceId: string) {
  const scheme = useRecordedScheme()
  const run = useRun()
  const leaks: Leaks = leaksOf(scheme, surfaceId) ?? { holes: [] }
  const change = (now: Leaks): string | null => {
    const says = now.gapMm !== undefined || now.holes.length > 0
    return run(setLeaks(scheme.id, surfaceId, says ? now : null))
  }
  return { leaks, change, scheme }
}

function LeakRow({ surface }: { readonly surface: SurfaceResult }) {
  const room = useRoom()
  const { leaks, change, scheme } = useLeaks(surface.id)
  const { gapMm: _, ...without } = leaks
  const cap = gapCap(room, surface, scheme)
  return (
    <>
      <tr className={leaks.holes.length > 0 ? 'has-says' : undefined}>
        <th scope="row">{surface.label}</th>
        <td data-label={HEADS[1]}>
          <ChoiceField<'usual' | 'typed'>
            name={`${surface.id}-gap-kind`}
            label={`Gap at the edges of ${surface.label}`}
            quiet
            value={leaks.gapMm === undefined ? 'usual' : 'typed'}
            options={[
              { value: 'usual', text: 'As airtightness says' },
              { value: 'typed', text: 'Typed, all round' },
            ]}
            onChoose={(kind) => change(kind === 'typed' ? { ...leaks, gapMm: TYPED_GAP_MM } : without)}
          />
        </td>
        <td data-label={HEADS[2]}>
          {leaks.gapMm === undefined ? (
            '–'
          ) : (
            <GapField surface={surface} gapMm={leaks.gapMm} onCommit={(gapMm) => change({ ...leaks, gapMm })} />
          )}
        </td>
        <td data-label={HEADS[3]}>{capWords(surface, cap)}</td>
        <td data-label={HEADS[4]}>{holeCount(leaks)}</td>
        <td data-label="" className="row-verbs">
          <button
            type="button"
            className="row-button"
            onClick={() => change({ ...leaks, holes: [...leaks.holes, usualHole(leaks.holes)] })}
          >
            Add a hole<span className="visually-hidden"> in {surface.label}</span>
          </button>
        </td>
      </tr>
      {leaks.holes.length > 0 && <Holes surface={surface} leaks={leaks} change={change} />}
    </>
  )
}

function holeCount({ holes }: Leaks): string {
  const count = holes.reduce((sum, hole) => sum + hole.count, 0)
  return count === 0 ? 'none' : String(count)
}

interface GapProps {
  readonly surface: SurfaceResult
  readonly gapMm: number
  readonly onCommit: (gapMm: number) => string | null
}

function GapField({ surface, gapMm, onCommit }: GapProps) {
  const { units } = useShownProject()
  const kept = useKept()
  return (
    <LengthField
      name={`${surface.id}-gap`}
      label={`Width of the gap, ${surface.label}`}
      quiet
      compact
      value={gapMm}
      unit={units}
      leastMm={0}
      onCommit={onCommit}
      kept={kept(`${surface.id}-gap`)}
    />
  )
}

interface HolesProps {
  readonly surface: SurfaceResult
  readonly leaks: Leaks
  readonly change: (leaks: Leaks) => string | null
}

function Holes({ surface, leaks, change }: HolesProps) {
  const room = useRoom()
  const put = (id: string, patch: Partial<Hole>) =>
    change({ ...leaks, holes: leaks.holes.map((hole) => (hole.id === id ? { ...hole, ...patch } : hole)) })
  return (
    <tr className="row-says">
      <td colSpan={HEADS.length + 1}>
        {leaks.holes.map((hole) => (
          <HoleFields
            key={hole.id}
            name={`${surface.id}-${hole.id}`}
            of={surface.label}
            hole={hole}
            caps={capWords(surface, holeCap(room, surface, hole))}
            onChange={(patch) => put(hole.id, patch)}
            onDelete={() => change({ ...leaks, holes: leaks.holes.filter(({ id }) => id !== hole.id) })}
          />
        ))}
      </td>
    </tr>
  )
}

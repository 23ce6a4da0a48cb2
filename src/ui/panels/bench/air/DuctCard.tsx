import { ductNotes } from '#analysis/air/ductNotes.ts'
import type { AirNeed } from '#analysis/air/need.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Duct, DuctMade } from '#analysis/room.ts'
import { changeDuct, deleteDuct, makeDuctIn } from '#state/commands/air.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { DuctFields } from '#ui/panels/bench/air/DuctFields.tsx'
import { DuctLossTable } from '#ui/panels/bench/air/DuctLossTable.tsx'
import { DuctMadeFields } from '#ui/panels/bench/air/DuctMadeFields.tsx'
import { Problems } from '#ui/panels/bench/tables/rows.tsx'
import { useRecordedScheme, useRun } from '#ui/panels/bench/useBench.ts'
import { useRoom, useScheme, useSession, useShownProject } from '#ui/session.ts'

/** Notes that tell how it is; all others ask for something to be done. */
const PLAIN: readonly string[] = ['air-slow', 'air-unknown', 'silencer-without-box']

interface Props {
  readonly duct: Duct
  readonly result: SchemeResult
  readonly need: AirNeed
}

/** One duct: where it goes, what is done against the sound in it, how it comes out. */
export function DuctCard({ duct, result, need }: Props) {
  const room = useRoom()
  const { document } = useSession()
  const scheme = useScheme()
  const { receivers, units } = useShownProject()
  const notes = ductNotes(duct, { room, scheme, result, receivers, need, units })
  const plain = notes.filter(({ code }) => PLAIN.includes(code))
  return (
    <article className="duct" aria-label={duct.name}>
      <header className="duct-head">
        <h4>{duct.name}</h4>
        <button type="button" className="row-button" onClick={() => document.run(deleteDuct(room.id, duct.id))}>
          Delete<span className="visually-hidden"> {duct.name}</span>
        </button>
      </header>
      <DuctFields duct={duct} />
      <AsItStands duct={duct} />
      <InScheme duct={duct} />
      <DuctLossTable duct={duct} />
      {plain.map(({ code, text }) => (
        <p key={code} className="bench-said">
          {text}
        </p>
      ))}
      <Problems texts={notes.filter((note) => !plain.includes(note)).map(({ text }) => text)} />
    </article>
  )
}

function AsItStands({ duct }: { readonly duct: Duct }) {
  const room = useRoom()
  const run = useRun()
  return (
    <DuctMadeFields
      name={duct.id}
      legend="As it stands"
      duct={duct}
      made={duct.made}
      onChange={(made) => run(changeDuct(room.id, duct.id, { made }))}
    />
  )
}

/** What the scheme on the page does to it: nothing, or something of its own. */
function InScheme({ duct }: { readonly duct: Duct }) {
  const run = useRun()
  const scheme = useRecordedScheme()
  const made = scheme.ducts?.[duct.id] ?? null
  const make = (now: DuctMade | null) => run(makeDuctIn(scheme.id, duct.id, now))
  return (
    <div className="duct-scheme">
      <ChoiceField<'stands' | 'changed'>
        name={`${duct.id}-in-scheme`}
        label={`In ${scheme.name}`}
        of={duct.name}
        value={made === null ? 'stands' : 'changed'}
        options={[
          { value: 'stands', text: 'It stays as it stands' },
          { value: 'changed', text: 'Something is done to it' },
        ]}
        onChoose={(how) => make(how === 'stands' ? null : duct.made)}
      />
      {made && (
        <DuctMadeFields
          name={`${scheme.id}-${duct.id}`}
          legend={`What ${scheme.name} does to it`}
          duct={duct}
          made={made}
          onChange={make}
        />
      )}
    </div>
  )
}

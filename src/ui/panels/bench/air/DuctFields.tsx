import type { Duct, Room } from '#analysis/room.ts'
import { changeDuct } from '#state/commands/air.ts'
import { CheckField } from '#ui/fields/CheckField.tsx'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { TextField } from '#ui/fields/TextField.tsx'
import { benchSurfaces } from '#ui/panels/bench/candidates.ts'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

type Change = (patch: Partial<Omit<Duct, 'id'>>) => string | null

interface Props {
  readonly duct: Duct
}

/** What a duct is and where it goes. */
export function DuctFields({ duct }: Props) {
  const room = useRoom()
  const run = useRun()
  const change: Change = (patch) => run(changeDuct(room.id, duct.id, patch))
  return (
    <form className="air-fields" aria-label={duct.name} onSubmit={(event) => event.preventDefault()}>
      <TextField name={`${duct.id}-name`} label="Name" value={duct.name} onCommit={(name) => change({ name })} />
      <ChoiceField<Duct['purpose']>
        name={`${duct.id}-purpose`}
        label="It brings"
        value={duct.purpose}
        options={[
          { value: 'supply', text: 'Air into the room' },
          { value: 'return', text: 'Air out of the room' },
          { value: 'other', text: 'No air for this room' },
        ]}
        onChoose={(purpose) => change({ purpose })}
      />
      <ChoiceField
        name={`${duct.id}-surface`}
        label="It goes through"
        value={duct.surface}
        options={surfaceOptions(room)}
        onChoose={(surface) => change({ surface })}
      />
      <SizeFields duct={duct} change={change} />
      <LeadsTo duct={duct} change={change} />
    </form>
  )
}

function surfaceOptions(room: Room) {
  return benchSurfaces(room).map(({ facts, label }) => ({ value: facts.id, text: label }))
}

function SizeFields({ duct, change }: Props & { readonly change: Change }) {
  const { units } = useShownProject()
  const kept = useKept()
  const { id, shape } = duct
  const length = (key: 'widthMm' | 'heightMm' | 'lengthMm', label: string, patch: (mm: number) => Partial<Duct>) => (
    <LengthField
      name={`${id}-${key}`}
      label={label}
      value={duct[key]}
      unit={units}
      leastMm={0}
      moreThanLeast
      onCommit={(mm) => change(patch(mm))}
      kept={kept(`${id}-${key}`)}
    />
  )
  return (
    <>
      <ChoiceField<Duct['shape']>
        name={`${id}-shape`}
        label="Shape"
        value={shape}
        options={[
          { value: 'round', text: 'Round' },
          { value: 'rectangular', text: 'Rectangular' },
        ]}
        onChoose={(to) => change(to === 'round' ? { shape: to, heightMm: duct.widthMm } : { shape: to })}
      />
      {shape === 'round'
        ? length('widthMm', 'Clear diameter', (mm) => ({ widthMm: mm, heightMm: mm }))
        : length('widthMm', 'Clear width', (widthMm) => ({ widthMm }))}
      {shape === 'rectangular' && length('heightMm', 'Clear height', (heightMm) => ({ heightMm }))}
      {length('lengthMm', 'Length, grille to grille', (lengthMm) => ({ lengthMm }))}
    </>
  )
}

/** Whoever has a grille on it, or hears where it ends. */
function LeadsTo({ duct, change }: Props & { readonly change: Change }) {
  const room = useRoom()
  const { receivers } = useShownProject()
  const own = receivers.filter((receiver) => receiver.room === room.id || duct.leadsTo.includes(receiver.id))
  return (
    <fieldset className="duct-leads">
      <legend className="field-label">It leads to</legend>
      {own.length === 0 && (
        <p className="field-hint">Nobody is named yet who could hear it: add receivers under Targets.</p>
      )}
      {own.map(({ id, name }) => (
        <CheckField
          key={id}
          name={`${duct.id}-to-${id}`}
          label={name}
          of={duct.name}
          isChecked={duct.leadsTo.includes(id)}
          onCheck={(leads) => {
            const others = duct.leadsTo.filter((other) => other !== id)
            return change({ leadsTo: leads ? [...others, id] : others })
          }}
        />
      ))}
    </fieldset>
  )
}

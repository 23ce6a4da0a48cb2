import type { ReactNode } from 'react'
import type { Opening } from '#analysis/room.ts'
import type { OpeningMade, SealCondition } from '#assemblies/opening.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { sealsFor, typesFor, withSeal, withType } from '#ui/panels/bench/openings/made/choosing.ts'
import { sealWords } from '#ui/panels/bench/openings/made/madeWords.ts'
import { PaneFields } from '#ui/panels/bench/openings/made/PaneFields.tsx'
import { SecondDoorFields } from '#ui/panels/bench/openings/made/SecondDoorFields.tsx'
import { useCatalogue } from '#ui/session.ts'

export interface MadeProps {
  readonly opening: Opening
  /** What is said; null: nothing. */
  readonly made: OpeningMade | null
  /** Begins the names of its fields. */
  readonly name: string
  /** The sentence of a refusal, or null. */
  readonly onMake: (made: OpeningMade | null) => string | null
}

interface TypeProps extends MadeProps {
  readonly label: string
  /** The list's first line: what it means to say nothing. */
  readonly nothing: string
  readonly hint?: string | null
  /** The opening as it is called, for who hears the label of one row among many. */
  readonly of?: string
}

const NOTHING = 'nothing'

/** What stands in an opening, as a list. */
export function TypeField({ opening, made, name, label, nothing, hint = null, of, onMake }: TypeProps) {
  const catalogue = useCatalogue()
  const types = typesFor(opening.kind, catalogue)
  const options = [
    { value: NOTHING, text: nothing },
    ...types.map(({ id, name: text }) => ({ value: id, text })),
    ...strange(made, types),
  ]
  const choose = (id: string) => {
    const type = catalogue.openingTypes.get(id)
    return onMake(type ? withType(made, type, opening) : null)
  }
  return (
    <ChoiceField<string>
      name={`${name}-type`}
      label={label}
      of={of}
      value={made?.type ?? NOTHING}
      options={options}
      hint={hint}
      onChoose={choose}
    />
  )
}

/** What was said and is in no list: it stays to be seen until something else is chosen. */
function strange(made: OpeningMade | null, types: readonly { readonly id: string }[]) {
  if (!made || types.some(({ id }) => id === made.type)) return []
  return [{ value: made.type, text: `"${made.type}", which cannot stand here` }]
}

/** How the seals of what stands there are; nothing where it has none. */
export function SealField({ opening, made, name, onMake, of }: MadeProps & Pick<TypeProps, 'of'>) {
  const type = useCatalogue().openingTypes.get(made?.type ?? '')
  const seals = type ? sealsFor(type, opening.kind) : []
  if (!made || !type || seals.length === 0) return null
  return (
    <ChoiceField<SealCondition>
      name={`${name}-seal`}
      label="Its seals"
      of={of}
      value={made.seal}
      options={seals.map((seal) => ({ value: seal, text: sealWords(seal, type) }))}
      onChoose={(seal) => onMake(withSeal(made, seal))}
    />
  )
}

interface GroupProps extends TypeProps {
  readonly legend: string
  readonly children?: ReactNode
}

/** Everything that can be said of what fills an opening: its type, seals, second door, panes and gap. */
export function MadeFields({ legend, children, ...props }: GroupProps) {
  return (
    <fieldset className="made-fields">
      <legend>{legend}</legend>
      <TypeField {...props} />
      <SealField {...props} />
      <SecondDoorFields {...props} />
      <PaneFields {...props} />
      {children}
    </fieldset>
  )
}

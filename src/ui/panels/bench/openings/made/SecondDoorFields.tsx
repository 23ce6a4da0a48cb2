import type { OpeningMade, OpeningType, SealCondition } from '#assemblies/opening.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { leafTypes, sealsFor, withSecond } from '#ui/panels/bench/openings/made/choosing.ts'
import type { MadeProps } from '#ui/panels/bench/openings/made/MadeFields.tsx'
import { sealWords } from '#ui/panels/bench/openings/made/madeWords.ts'
import { useCatalogue } from '#ui/session.ts'

const USUAL = 'usual'

/** The second door of two, where the type is a pair or a lobby door is drawn. */
export function SecondDoorFields({ opening, made, name, onMake }: MadeProps) {
  const catalogue = useCatalogue()
  const type = catalogue.openingTypes.get(made?.type ?? '')
  if (!made || !type || opening.kind !== 'door' || !canHaveSecond(type, made, opening.lobby !== null)) return null
  const second = made.second && catalogue.openingTypes.get(made.second.type)
  const choose = (id: string) => onMake(withSecond(made, catalogue.openingTypes.get(id) ?? null, opening.kind))
  return (
    <>
      <ChoiceField<string>
        name={`${name}-second`}
        label="Second door"
        value={made.second?.type ?? USUAL}
        options={[
          { value: USUAL, text: usualWords(type) },
          ...leafTypes(catalogue).map(({ id, name: text }) => ({ value: id, text })),
        ]}
        onChoose={choose}
      />
      {made.second && second && (
        <SecondSeal second={second} made={made} opening={opening} name={name} onMake={onMake} />
      )}
    </>
  )
}

function canHaveSecond({ loss, seals }: OpeningType, { second }: OpeningMade, isLobbyDrawn: boolean): boolean {
  return loss.kind === 'pair' || second !== undefined || (isLobbyDrawn && seals !== 'none')
}

function usualWords({ loss }: OpeningType): string {
  return loss.kind === 'pair' ? 'The same again, its seals alike' : 'Nothing is said of it'
}

function SecondSeal({ opening, made, name, onMake, second }: MadeProps & { readonly second: OpeningType }) {
  if (!made?.second) return null
  const { type } = made.second
  return (
    <ChoiceField<SealCondition>
      name={`${name}-second-seal`}
      label="Seals of the second door"
      value={made.second.seal}
      options={sealsFor(second, opening.kind).map((seal) => ({ value: seal, text: sealWords(seal, second) }))}
      onChoose={(seal) => onMake({ ...made, second: { type, seal } })}
    />
  )
}

import type { LevelPlace, Source } from '#analysis/target.ts'
import { changeSource } from '#state/commands/targets.ts'
import { CheckField } from '#ui/fields/CheckField.tsx'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { NumberField } from '#ui/fields/NumberField.tsx'
import { TextField } from '#ui/fields/TextField.tsx'
import { OctaveFields } from '#ui/panels/bench/targets/OctaveFields.tsx'
import { silentOctaves } from '#ui/panels/bench/targets/spectrum.ts'
import { LEVEL_PLACE_WORDS, originWords, overallWords } from '#ui/panels/bench/targets/targetWords.ts'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'

const PLACES: readonly LevelPlace[] = ['room-average', 'one-metre', 'facade']

/** Everything that can be said of one source. */
export function SourceForm({ source }: { readonly source: Source }) {
  const run = useRun()
  const kept = useKept()
  const { id, name } = source
  const change = (patch: Partial<Omit<Source, 'id'>>) => run(changeSource(id, patch))
  return (
    <form className="target-form source-form" aria-label={name} onSubmit={(event) => event.preventDefault()}>
      <fieldset className="target-group">
        <legend>{name}</legend>
        <TextField name={`${id}-name`} label="Name" value={name} onCommit={(text) => change({ name: text })} />
        <ChoiceField<LevelPlace>
          name={`${id}-place`}
          label="Its levels are of"
          value={source.place}
          options={PLACES.map((place) => ({ value: place, text: LEVEL_PLACE_WORDS[place] }))}
          onChoose={(place) => change({ place })}
        />
        <NumberField
          name={`${id}-sd`}
          label="Spread, one standard deviation"
          unit="dB"
          what="The spread"
          example={5}
          value={source.sdDb}
          onCommit={(sdDb) => (sdDb === null ? null : change({ sdDb }))}
          kept={kept(`${id}-sd`)}
        />
        <CheckField
          name={`${id}-shakes`}
          label="It shakes the building too"
          isChecked={source.shakes}
          hint="Drums, bass, cinema: no airborne figure covers that."
          onCheck={(shakes) => change({ shakes })}
        />
        <OctaveFields
          name={`${id}-level`}
          legend="Level by octave, dB"
          what="a level"
          values={source.levelsDb}
          onCommit={(levelsDb) => change({ levelsDb })}
        />
        <SourceFacts source={source} />
      </fieldset>
    </form>
  )
}

function SourceFacts({ source }: { readonly source: Source }) {
  const silent = silentOctaves(source.levelsDb)
  const overall = overallWords(source)
  return (
    <div className="target-says">
      <p className="bench-said">
        {overall !== null && `${overall} together. `}
        {originWords(source)}
      </p>
      {silent !== null && (
        <p className="bench-said target-missing">
          <span className="warn-sign" aria-hidden="true" />
          {overall === null
            ? 'No octave has a level yet, so nothing can be judged: type at least one.'
            : `There is no level at ${silent}: nothing is judged there. What is typed is kept.`}
        </p>
      )}
    </div>
  )
}

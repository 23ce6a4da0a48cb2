import { airtightnessCap, mostSpoilt } from '#analysis/air/leakCaps.ts'
import { jointOf, USUAL_AIRTIGHTNESS } from '#analysis/paths/leakPaths.ts'
import type { SchemeResult } from '#analysis/results.ts'
import { AIRTIGHTNESS, type Airtightness as Tightness } from '#analysis/scheme.ts'
import { setAirtightness } from '#state/commands/air.ts'
import { capSentence } from '#ui/panels/bench/air/leakWords.ts'
import { useRecordedScheme, useRun } from '#ui/panels/bench/useBench.ts'
import { useRoom } from '#ui/session.ts'

/** How well joints and penetrations are closed in this scheme, with what each choice means and costs. */
export function Airtightness({ result }: { readonly result: SchemeResult }) {
  const scheme = useRecordedScheme()
  const chosen = scheme.airtightness ?? USUAL_AIRTIGHTNESS
  return (
    <section className="air-part" aria-label="Airtightness">
      <h3>Airtightness</h3>
      <fieldset className="tightness">
        <legend className="field-label">Joints and penetrations in {scheme.name}</legend>
        {AIRTIGHTNESS.map((airtightness) => (
          <Choice key={airtightness} airtightness={airtightness} isChosen={airtightness === chosen} result={result} />
        ))}
      </fieldset>
    </section>
  )
}

interface ChoiceProps {
  readonly airtightness: Tightness
  readonly isChosen: boolean
  readonly result: SchemeResult
}

function Choice({ airtightness, isChosen, result }: ChoiceProps) {
  const room = useRoom()
  const scheme = useRecordedScheme()
  const run = useRun()
  const joint = jointOf(airtightness)
  const surface = mostSpoilt(result.surfaces)
  const cap = surface && airtightnessCap(room, surface, airtightness)
  return (
    <label className="tightness-choice">
      <input
        type="radio"
        name="airtightness"
        value={airtightness}
        checked={isChosen}
        onChange={() => run(setAirtightness(scheme.id, airtightness))}
      />
      <span>
        <strong>{joint.name}</strong>
        <span className="line">{joint.means}</span>
        {surface && <span className="line">{capSentence(surface, cap)}</span>}
        <span className="line field-hint">{joint.source}.</span>
      </span>
    </label>
  )
}

import { useState } from 'react'
import { targetCautions } from '#analysis/cautions/targets.ts'
import { compareSchemes } from '#analysis/compare.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { schemeLetter } from '#state/commands/schemes.ts'
import { TradeOff } from '#ui/charts/TradeOff.tsx'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { CompareMargins } from '#ui/panels/bench/CompareMargins.tsx'
import { CompareTable } from '#ui/panels/bench/CompareTable.tsx'
import { differenceSentence, shareCautions } from '#ui/panels/bench/compareWords.ts'
import { SmallPlans } from '#ui/panels/bench/SmallPlans.tsx'
import { CautionItem } from '#ui/panels/ledger/quietLines.tsx'
import { schemeTitle } from '#ui/panels/words.ts'
import { useRoom, useScheme, useSession, useShownProject } from '#ui/session.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** A scheme with its letter and, unless its geometry was refused, its results. */
export interface ComparedScheme {
  readonly scheme: Scheme
  readonly letter: string
  readonly result: SchemeResult | null
  readonly refusal: string | null
}

/** Every scheme with its results in the room on the page. */
function useCompared(): readonly ComparedScheme[] {
  const { results } = useSession()
  const project = useShownProject()
  const room = useRoom()
  return project.schemes.map((scheme, index) => {
    const outcome = results(project, room, scheme)
    return {
      scheme,
      letter: schemeLetter(index),
      result: outcome.ok ? outcome.value : null,
      refusal: outcome.ok ? null : outcome.error.message,
    }
  })
}

/** Schemes side by side: plans at one scale, the trade, the numbers, and every caution in full. */
export function Compare() {
  const compared = useCompared()
  const cautioned = useCautioned(compared)
  const { units } = useShownProject()
  const room = useRoom()
  return (
    <div className="compare">
      <div className="compare-views">
        <SmallPlans room={room} compared={compared} units={units} />
        <TradeOff
          units={units}
          marks={compared.flatMap(({ letter, scheme, result }, index) =>
            result ? [{ index, name: schemeTitle(scheme.name, letter), result }] : [],
          )}
        />
      </div>
      {compared.map(({ scheme, refusal }) =>
        refusal === null ? null : (
          <p key={scheme.id} className="ledger-refusal" role="alert">
            <span className="warn-sign" aria-hidden="true" />
            {scheme.name}: {refusal}
          </p>
        ),
      )}
      <CompareMargins compared={compared} />
      <CompareTable compared={compared} units={units} />
      <Differences compared={compared} units={units} />
      <ComparedCautions results={cautioned} />
    </div>
  )
}

/** Results with what their targets ask to be read as well. */
function useCautioned(compared: readonly ComparedScheme[]): readonly SchemeResult[] {
  const { receivers, sources } = useShownProject()
  const room = useRoom()
  return compared.flatMap(({ scheme, result }) => {
    if (!result) return []
    const cautions = [...targetCautions({ room, scheme, result, receivers, sources }), ...result.cautions]
    return [{ ...result, cautions }]
  })
}

interface DifferencesProps {
  readonly compared: readonly ComparedScheme[]
  readonly units: LengthUnit
}

/** Every other scheme against one, in a sentence each; at first against the scheme on the page. */
function Differences({ compared, units }: DifferencesProps) {
  const onPage = useScheme().id
  const [picked, setPicked] = useState<string | null>(null)
  const baseId = compared.some(({ scheme }) => scheme.id === picked) ? picked : onPage
  const base = compared.find(({ scheme }) => scheme.id === baseId)?.result
  const others = compared.flatMap(({ scheme, result }) => (result && scheme.id !== baseId ? [result] : []))
  if (compared.length < 2) {
    return <p className="bench-said">There is one scheme; add another at the top of the page to compare it with.</p>
  }
  return (
    <section aria-label="Differences" className="differences">
      <ChoiceField
        name="compared-with"
        label="Compared with"
        value={baseId ?? onPage}
        options={compared.map(({ scheme }) => ({ value: scheme.id, text: scheme.name }))}
        onChoose={setPicked}
      />
      <ul className="compare-sentences">
        {base &&
          compareSchemes(base, others).map((diff, index) => (
            <li key={diff.schemeId}>{differenceSentence(base, others[index]!, diff, units)}</li>
          ))}
      </ul>
    </section>
  )
}

function ComparedCautions({ results }: { readonly results: readonly SchemeResult[] }) {
  const { all, own } = shareCautions(results)
  if (all.length === 0 && own.length === 0) return null
  return (
    <section aria-label="Cautions" className="compare-cautions">
      {own.map(({ name, cautions }) => (
        <div key={name}>
          <h3>Cautions of {name}</h3>
          <ul className="cautions">
            {cautions.map((caution) => (
              <CautionItem key={caution.code + caution.text} caution={caution} />
            ))}
          </ul>
        </div>
      ))}
      {all.length > 0 && (
        <div>
          <h3>{results.length > 1 ? 'Cautions of every scheme' : 'Cautions'}</h3>
          <ul className="cautions">
            {all.map((caution) => (
              <CautionItem key={caution.code + caution.text} caution={caution} />
            ))}
          </ul>
        </div>
      )}
    </section>
  )
}

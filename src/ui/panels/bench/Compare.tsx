import { compareSchemes } from '#analysis/compare.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { schemeLetter } from '#state/commands/schemes.ts'
import { TradeOff } from '#ui/charts/TradeOff.tsx'
import { CompareTable } from '#ui/panels/bench/CompareTable.tsx'
import { differenceSentence, shareCautions } from '#ui/panels/bench/compareWords.ts'
import { SmallPlans } from '#ui/panels/bench/SmallPlans.tsx'
import { CautionItem } from '#ui/panels/ledger/quietLines.tsx'
import { useRoom, useSession, useShownProject } from '#ui/session.ts'

/** A scheme with its letter and, unless its geometry was refused, its results. */
export interface ComparedScheme {
  readonly scheme: Scheme
  readonly letter: string
  readonly result: SchemeResult | null
  readonly refusal: string | null
}

/** Every scheme with its results in the room on the page. */
export function useCompared(): readonly ComparedScheme[] {
  const { results } = useSession()
  const project = useShownProject()
  const room = useRoom()
  return project.schemes.map((scheme, index) => {
    const outcome = results(room, scheme)
    return {
      scheme,
      letter: schemeLetter(index),
      result: outcome.ok ? outcome.value : null,
      refusal: outcome.ok ? null : outcome.error.message,
    }
  })
}

/** Schemes side by side: plans at one scale, the numbers, the trade, and every caution in full. */
export function Compare() {
  const compared = useCompared()
  const { units } = useShownProject()
  const room = useRoom()
  const results = compared.flatMap(({ result }) => (result ? [result] : []))
  const [base, ...others] = results
  return (
    <div className="compare">
      {base && others.length > 0 ? (
        <ul className="compare-sentences">
          {compareSchemes(base, others).map((diff, index) => (
            <li key={diff.schemeId}>{differenceSentence(base, others[index]!, diff, units)}</li>
          ))}
        </ul>
      ) : (
        <p className="bench-said">There is one scheme; add another at the top of the page to compare it with.</p>
      )}
      {compared.map(({ scheme, refusal }) =>
        refusal === null ? null : (
          <p key={scheme.id} className="ledger-refusal" role="alert">
            ▲ {scheme.name}: {refusal}
          </p>
        ),
      )}
      <div className="compare-views">
        <SmallPlans room={room} compared={compared} units={units} />
        <TradeOff
          units={units}
          marks={compared.flatMap(({ letter, scheme, result }, index) =>
            result ? [{ letter, index, name: scheme.name, result }] : [],
          )}
        />
      </div>
      <CompareTable compared={compared} units={units} />
      <ComparedCautions results={results} />
    </div>
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

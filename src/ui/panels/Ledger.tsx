import { schemeLetter } from '#state/commands/schemes.ts'
import { Cautions, clashesOf, QuietLine, WeightLine } from '#ui/panels/ledger/quietLines.tsx'
import { FloorLine, HeightLine, type LineProps, VolumeLine } from '#ui/panels/ledger/spaceLines.tsx'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { schemeTitle } from '#ui/panels/words.ts'
import { useScheme, useShownProject } from '#ui/session.ts'

/** The six numbers a client asks first, each before and after; a line opens downward into its detail. */
export function Ledger() {
  const project = useShownProject()
  const scheme = useScheme()
  const { result, refusal, before, cause } = useLedger()
  const letter = schemeLetter(project.schemes.findIndex(({ id }) => id === scheme.id))
  return (
    <aside aria-label="Ledger" className="ledger">
      <h2 className="ledger-head">Ledger · {schemeTitle(scheme.name, letter)}</h2>
      {refusal !== null && (
        <p className="ledger-refusal" role="alert">
          <span className="warn-sign" aria-hidden="true" />
          {refusal} {result && 'The numbers below are the last that could be computed.'}
        </p>
      )}
      {result && (
        <div className={refusal === null ? undefined : 'is-former'}>
          <Lines result={result} before={refusal === null ? before : null} cause={cause} unit={project.units} />
        </div>
      )}
    </aside>
  )
}

function Lines(props: LineProps) {
  return (
    <>
      <FloorLine {...props} />
      <HeightLine {...props} />
      <VolumeLine {...props} />
      <QuietLine {...props} />
      <WeightLine {...props} />
      <Cautions cautions={props.result.cautions} clashes={clashesOf(props.result)} />
    </>
  )
}

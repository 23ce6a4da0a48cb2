import airflow from '#acoustics/data/airflow.json' with { type: 'json' }
import { flowNotes } from '#analysis/air/ductNotes.ts'
import { airNeed, needWords } from '#analysis/air/need.ts'
import { roomLimit } from '#analysis/air/quiet.ts'
import type { SchemeResult } from '#analysis/results.ts'
import { setPeople } from '#state/commands/air.ts'
import { NumberField } from '#ui/fields/NumberField.tsx'
import { Problems } from '#ui/panels/bench/tables/rows.tsx'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { capital } from '#ui/panels/words.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

/** How many people there are, and how much air that asks for. */
export function NeedPart({ result }: { readonly result: SchemeResult }) {
  const room = useRoom()
  const { receivers } = useShownProject()
  const run = useRun()
  const kept = useKept()
  const need = airNeed(room, result)
  const { words } = roomLimit(room, receivers)
  return (
    <section className="air-part" aria-label="Air for people">
      <h3>Air for people</h3>
      <div className="field-row">
        <NumberField
          name="people"
          label="People in the room at once"
          unit=""
          what="How many people there are"
          example={4}
          value={room.people ?? null}
          canBeEmpty
          hint="Empty: nobody has said."
          onCommit={(people) => run(setPeople(room.id, people))}
          kept={kept(`${room.id}-people`)}
        />
      </div>
      <p className="bench-said" role="status">
        {capital(needWords(need))} ({airflow.need.source}; {airflow.need.status}). Moving air has to keep to {words}.
      </p>
      <Problems texts={flowNotes(room, need).map(({ text }) => text)} />
    </section>
  )
}

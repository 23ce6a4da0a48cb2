import type { Source } from '#analysis/target.ts'
import { deleteSource } from '#state/commands/targets.ts'
import { Heads, NothingYet } from '#ui/panels/bench/tables/rows.tsx'
import { AddSource } from '#ui/panels/bench/targets/AddSource.tsx'
import { BASIS_WORDS, overallWords } from '#ui/panels/bench/targets/targetWords.ts'
import { useSession, useShownProject } from '#ui/session.ts'

const OUT_OF_SCOPE =
  'Road traffic, trains and aircraft are heard through the air and stand in the list. Footsteps and thuds, and what a train shakes through the ground, are not airborne sound: no figure here stands for them.'

interface Props {
  /** The source in hand; null: none. */
  readonly pickedId: string | null
  readonly onPick: (id: string) => void
}

/** What is heard: played in the room, or coming in from outside. */
export function SourceList({ pickedId, onPick }: Props) {
  const { sources } = useShownProject()
  return (
    <section className="target-list" aria-label="What is heard">
      <h3>What is heard</h3>
      {sources.length === 0 ? (
        <NothingYet text="Nothing yet. Choose what is played, or what comes in, and add it." />
      ) : (
        <table className="figures">
          <caption className="visually-hidden">Sources</caption>
          <Heads heads={['Source', 'Level']} />
          <tbody>
            {sources.map((source) => (
              <SourceRow key={source.id} source={source} isPicked={source.id === pickedId} onPick={onPick} />
            ))}
          </tbody>
        </table>
      )}
      <details className="add-more" open={sources.length === 0}>
        <summary>Add a source</summary>
        <AddSource onAdded={onPick} />
        <p className="table-note">{OUT_OF_SCOPE}</p>
      </details>
    </section>
  )
}

interface RowProps {
  readonly source: Source
  readonly isPicked: boolean
  readonly onPick: (id: string) => void
}

function SourceRow({ source, isPicked, onPick }: RowProps) {
  const { document } = useSession()
  const { id, name, basis } = source
  return (
    <tr aria-current={isPicked ? 'true' : undefined}>
      <th scope="row">
        <button type="button" className="row-button" onClick={() => onPick(id)}>
          {name}
        </button>
      </th>
      <td className="number">
        {overallWords(source) ?? 'not known'}
        <span className="under">{BASIS_WORDS[basis]}</span>
      </td>
      <td className="row-verbs">
        <button type="button" className="row-button" onClick={() => document.run(deleteSource(id))}>
          Delete<span className="visually-hidden"> {name}</span>
        </button>
      </td>
    </tr>
  )
}

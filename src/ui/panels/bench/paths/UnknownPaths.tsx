import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { useShowPath } from '#ui/panels/bench/paths/useShowPath.ts'
import { useSession } from '#ui/session.ts'

/** Ways of which nothing is known, each with what is missing and a press that goes there. */
export function UnknownPaths({ answer }: { readonly answer: ReceiverAnswer }) {
  const { view } = useSession()
  const show = useShowPath()
  if (answer.marginDb !== null) return null
  return (
    <section className="paths-unknown" aria-label="Not known">
      <h3>Not known</h3>
      {answer.unknown.length === 0 ? (
        <button
          type="button"
          className="action plain"
          onClick={() => view.setState({ ...NOTHING_SELECTED, roomView: 'targets' })}
        >
          Go to Targets
        </button>
      ) : (
        <ul className="unknown-paths">
          {answer.unknown.map((path) => (
            <li key={path.id}>
              <button type="button" className="row-button" onClick={() => show(path)}>
                {path.label}
              </button>{' '}
              <span>{path.why}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}

import { Component, type ReactNode } from 'react'

interface Props {
  /** Hands the open project over as a file, as recorded. */
  readonly download: () => void
  readonly children: ReactNode
}

interface State {
  readonly failure: Error | null
}

/** Our own mistake must not cost anybody's work: the project is offered as a file. */
export class ErrorScreen extends Component<Props, State> {
  override state: State = { failure: null }

  static getDerivedStateFromError(cause: unknown): State {
    return { failure: cause instanceof Error ? cause : new Error(String(cause)) }
  }

  override render(): ReactNode {
    const { failure } = this.state
    if (failure === null) return this.props.children
    return (
      <main className="error-screen">
        <h1>Leafgap made a mistake and stopped</h1>
        <p>
          Nothing you entered is lost. Download the project as a file, then load the page again; it opens on the last
          version kept on this machine.
        </p>
        <div className="verbs">
          <button type="button" className="action" onClick={this.props.download}>
            Download the project
          </button>
          <button type="button" className="verb" onClick={() => window.location.reload()}>
            Load the page again
          </button>
        </div>
        <details>
          <summary>What went wrong</summary>
          <pre>{failure.stack ?? failure.message}</pre>
        </details>
      </main>
    )
  }
}

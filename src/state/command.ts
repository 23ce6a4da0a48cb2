import type { Project } from '#project/project.ts'
import type { Result } from '#units/result.ts'

/** Why a command could not be carried out: a sentence saying what, where and what now. The document stays. */
export interface Refusal {
  readonly code: string
  readonly message: string
}

/** One thing the user does, and one undo step. */
export interface Command {
  /** In the imperative, as the Undo button reads it: move corner, set wall length. */
  readonly label: string
  readonly apply: (project: Project) => Result<Project, Refusal>
}

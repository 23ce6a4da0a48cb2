import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { useSession } from '#ui/session.ts'

/** Runs a command that adds to a list, and tells who was added last; answers with the sentence of a refusal, or null. */
export function useAdding(
  list: 'sources' | 'receivers',
  onAdded: (id: string) => void,
): (command: Command) => string | null {
  const { document } = useSession()
  return (command) => {
    const outcome = document.run(command)
    if (!outcome.ok) {
      document.dismissRefusal()
      return outcome.error.message
    }
    const id = lastId(outcome.value, list)
    if (id !== null) onAdded(id)
    return null
  }
}

function lastId(project: Project, list: 'sources' | 'receivers'): string | null {
  return project[list].at(-1)?.id ?? null
}

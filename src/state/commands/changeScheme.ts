import { type Scheme, type SchemeChange, withChange } from '#analysis/scheme.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { editScheme } from '#state/commands/edit.ts'
import { fail, ok } from '#units/result.ts'

/** Makes a change that is one step for the user, such as what to do next for a path; `label` is how Undo reads it. */
export function changeScheme(schemeId: string, change: SchemeChange, label: string): Command {
  return {
    label,
    apply: (project) =>
      editScheme(project, schemeId, (scheme: Scheme) => {
        const refused = goneRefusal(project, change)
        return refused ? fail(refused) : ok(withChange(scheme, change))
      }),
  }
}

/** A refusal where the change speaks of something that is not there: a step worked out before it was taken away. */
function goneRefusal({ rooms }: Project, { choices, leaks, openings, ducts }: SchemeChange): Refusal | null {
  const surfaces = rooms.flatMap((room) => [...room.walls, room.ceiling, room.floor])
  const named = [
    { what: 'surface', ids: [...Object.keys(choices ?? {}), ...Object.keys(leaks ?? {})], there: surfaces },
    { what: 'opening', ids: Object.keys(openings ?? {}), there: rooms.flatMap((room) => room.openings) },
    { what: 'duct', ids: Object.keys(ducts ?? {}), there: rooms.flatMap((room) => room.ducts ?? []) },
  ]
  for (const { what, ids, there } of named) {
    const gone = ids.find((id) => !there.some((thing) => thing.id === id))
    if (gone !== undefined) {
      const message = `There is no ${what} "${gone}" in this project any more; choose again what to do.`
      return { code: `no-${what}`, message }
    }
  }
  return null
}

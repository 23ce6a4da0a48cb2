import { type SchemeChange, withChange } from '#analysis/scheme.ts'
import type { Command } from '#state/command.ts'
import { fail, ok } from '#units/result.ts'

/** Makes a change that is one step for the user, such as what to do next for a path; `label` is how Undo reads it. */
export function changeScheme(schemeId: string, change: SchemeChange, label: string): Command {
  return {
    label,
    apply: (project) => {
      const index = project.schemes.findIndex(({ id }) => id === schemeId)
      const scheme = project.schemes[index]
      if (!scheme) return fail({ code: 'no-scheme', message: `There is no scheme "${schemeId}" in this project.` })
      return ok({ ...project, schemes: project.schemes.with(index, withChange(scheme, change)) })
    },
  }
}

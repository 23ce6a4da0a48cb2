import { LONGEST_NAME, LONGEST_NOTE } from '#project/limits.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import type { LengthUnit } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Shows lengths in other units; nothing stored changes but the choice. */
export function setUnits(units: LengthUnit): Command {
  return {
    label: units === 'mm' ? 'show millimetres' : 'show feet and inches',
    apply: (project) => ok(project.units === units ? project : { ...project, units }),
  }
}

export function renameProject(name: string): Command {
  return {
    label: 'rename project',
    apply: (project) =>
      name.trim() === ''
        ? fail({ code: 'no-name', message: 'A project needs a name; the former one was kept.' })
        : name.trim().length > LONGEST_NAME
          ? fail({ code: 'long-name', message: `A name has at most ${LONGEST_NAME} letters; the former one was kept.` })
          : ok({ ...project, name: name.trim() }),
  }
}

/** Sets the line of the user's own that is printed on the sheet. */
export function setNote(note: string): Command {
  return { label: 'write the note', apply: (project) => noteTaken(project, note) }
}

function noteTaken(project: Project, note: string): Result<Project, Refusal> {
  if (note.length <= LONGEST_NOTE) return ok({ ...project, note })
  return fail({ code: 'long-note', message: `A note has at most ${LONGEST_NOTE} letters; the former one was kept.` })
}

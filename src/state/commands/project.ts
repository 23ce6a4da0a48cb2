import type { Command } from '#state/command.ts'
import type { LengthUnit } from '#units/quantity.ts'
import { fail, ok } from '#units/result.ts'

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
        : ok({ ...project, name: name.trim() }),
  }
}

/** Sets the line of the user's own that is printed on the sheet. */
export function setNote(note: string): Command {
  return { label: 'write the note', apply: (project) => ok({ ...project, note }) }
}

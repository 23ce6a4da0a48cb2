import type { Opening } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { OpeningMade } from '#assemblies/opening.ts'
import { openingMadeProblem } from '#assemblies/openingProblems.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { changedEntry, editRoom, noThing } from '#state/commands/edit.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Says what fills an opening as it stands; null: nobody knows. */
export function makeOpening(roomId: string, openingId: string, made: OpeningMade | null): Command {
  return {
    label: 'say what an opening is',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const opening = room.openings.find(({ id }) => id === openingId)
        const refused = opening && made ? refusal(project, opening, made) : null
        if (refused) return fail(refused)
        const changed = changedEntry(room.openings, openingId, ({ made: _, ...rest }) =>
          made ? { ...rest, made } : rest,
        )
        return changed ? ok({ ...room, openings: changed.entries }) : noThing('opening', openingId)
      }),
  }
}

/** Puts something into an opening in a scheme; null: it stays there as it stands. */
export function makeOpeningIn(schemeId: string, openingId: string, made: OpeningMade | null): Command {
  return {
    label: made ? 'put into opening' : 'leave opening as it stands',
    apply: (project) => {
      const index = project.schemes.findIndex(({ id }) => id === schemeId)
      const scheme = project.schemes[index]
      if (!scheme) return fail({ code: 'no-scheme', message: `There is no scheme "${schemeId}" in this project.` })
      const put = withOpening(project, scheme, openingId, made)
      return put.ok ? ok({ ...project, schemes: project.schemes.with(index, put.value) }) : put
    },
  }
}

function withOpening(
  project: Project,
  scheme: Scheme,
  openingId: string,
  made: OpeningMade | null,
): Result<Scheme, Refusal> {
  const opening = project.rooms.flatMap(({ openings }) => openings).find(({ id }) => id === openingId)
  if (!opening) {
    return fail({ code: 'no-opening', message: `There is no opening "${openingId}" in this project any more.` })
  }
  const refused = made ? refusal(project, opening, made) : null
  if (refused) return fail(refused)
  const { openings, ...rest } = scheme
  const others = Object.fromEntries(Object.entries(openings ?? {}).filter(([id]) => id !== openingId))
  const now = made ? { ...others, [openingId]: made } : others
  return ok(Object.keys(now).length > 0 ? { ...rest, openings: now } : rest)
}

function refusal(project: Project, { name, kind }: Opening, made: OpeningMade): Refusal | null {
  const problem = openingMadeProblem(made, { name, kind }, projectCatalogue(project))
  return problem && { code: problem.code, message: problem.text }
}

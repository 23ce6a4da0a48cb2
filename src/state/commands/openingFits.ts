import type { OpeningMade } from '#assemblies/opening.ts'
import { openingMadeProblem } from '#assemblies/openingProblems.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'
import { withOpeningsOf } from '#state/commands/openingChoices.ts'

/** The project without what cannot stand in an opening since that became one of another kind: a door's leaf in a window. */
export function withFittingFill(project: Project, roomId: string, openingId: string): Project {
  const room = project.rooms.find(({ id }) => id === roomId)
  const opening = room?.openings.find(({ id }) => id === openingId)
  if (!room || !opening) return project
  const catalogue = projectCatalogue(project)
  const fits = (made: OpeningMade | undefined) => !made || openingMadeProblem(made, opening, catalogue) === null
  const { made, ...bare } = opening
  const kept = fits(made) ? opening : bare
  const openings = room.openings.map((other) => (other === opening ? kept : other))
  return {
    ...project,
    rooms: kept === opening ? project.rooms : project.rooms.map((it) => (it === room ? { ...room, openings } : it)),
    schemes: project.schemes.map((scheme) =>
      fits(scheme.openings?.[openingId]) ? scheme : withOpeningsOf(scheme, (id) => id !== openingId),
    ),
  }
}

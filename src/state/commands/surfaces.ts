import type { Room, SurfaceFacts } from '#analysis/room.ts'
import { type Choice, choiceFor, type Scheme } from '#analysis/scheme.ts'
import { AS_IS, type Assembly, type SurfaceKind } from '#assemblies/assembly.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import { DEEPEST_MM } from '#project/limits.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { editRoom } from '#state/commands/edit.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** What can be said of a surface as it stands. */
export type FactsPatch = Partial<Omit<SurfaceFacts, 'id'>>

/** Says what one or several surfaces are made of, what is behind them and what was measured. */
export function describeSurfaces(roomId: string, surfaceIds: readonly string[], patch: FactsPatch): Command {
  return {
    label: 'say what stands there',
    apply: (project) => {
      const refused = badSize(patch)
      if (refused) return fail(refused)
      return editRoom(project, roomId, (room) => ok(patchSurfaces(room, new Set(surfaceIds), patch)))
    },
  }
}

function patchSurfaces(room: Room, ids: ReadonlySet<string>, patch: FactsPatch): Room {
  const changed = <Facts extends SurfaceFacts>(facts: Facts): Facts =>
    ids.has(facts.id) ? { ...facts, ...patch } : facts
  return {
    ...room,
    walls: room.walls.map(changed),
    ceiling: changed(room.ceiling),
    floor: changed(room.floor),
  }
}

function badSize(patch: FactsPatch): Refusal | null {
  const thickness = patch.lining?.thicknessMm
  if (thickness !== undefined && !(Number.isFinite(thickness) && thickness > 0)) {
    return {
      code: 'not-positive',
      message: 'The lining has to be thicker than 0; choose "no lining" if there is none.',
    }
  }
  if (Math.max(thickness ?? 0, patch.outOfTrueMm ?? 0) > DEEPEST_MM) {
    return { code: 'too-deep', message: `A lining or an allowance has at most ${DEEPEST_MM / 1000} m; check its unit.` }
  }
  const allowance = patch.outOfTrueMm
  if (allowance !== undefined && !(Number.isFinite(allowance) && allowance >= 0)) {
    return { code: 'not-positive', message: 'The out-of-true allowance cannot be less than 0.' }
  }
  return null
}

/** Builds an assembly against one or several surfaces of a scheme; the lining stays or goes as it was chosen before. */
export function assignAssembly(schemeId: string, surfaceIds: readonly string[], assembly: Assembly | null): Command {
  return {
    label: assembly ? `build ${assembly.shortName}` : 'leave as is',
    apply: (project) => {
      const refused = assembly && misplaced(project, surfaceIds, assembly)
      if (refused) return fail(refused)
      return editChoices(project, schemeId, surfaceIds, (choice) => ({ ...choice, assembly: assembly?.id ?? AS_IS }))
    },
  }
}

/** Takes the existing lining off first, or leaves it. */
export function removeLining(schemeId: string, surfaceIds: readonly string[], remove: boolean): Command {
  return {
    label: remove ? 'remove lining' : 'keep lining',
    apply: (project) => editChoices(project, schemeId, surfaceIds, (choice) => ({ ...choice, removeLining: remove })),
  }
}

/** A refusal where an assembly is not in the project, or made for another kind of surface. */
function misplaced(project: Project, surfaceIds: readonly string[], assembly: Assembly): Refusal | null {
  if (!projectCatalogue(project).assemblies.has(assembly.id)) {
    const message = `"${assembly.name}" is no longer in this project; nothing was changed.`
    return { code: 'no-assembly', message }
  }
  const kinds = surfaceIds.map((id) => surfaceKind(project, id))
  const wrong = kinds.find((kind) => kind !== null && kind !== assembly.surface)
  if (!wrong) return null
  const message = `"${assembly.name}" is for a ${assembly.surface}, not a ${wrong}; nothing was changed.`
  return { code: 'wrong-surface', message }
}

function surfaceKind(project: Project, id: string): SurfaceKind | null {
  for (const room of project.rooms) {
    if (room.ceiling.id === id) return 'ceiling'
    if (room.floor.id === id) return 'floor'
    if (room.walls.some((wall) => wall.id === id)) return 'wall'
  }
  return null
}

function editChoices(
  project: Project,
  schemeId: string,
  surfaceIds: readonly string[],
  change: (choice: Choice) => Choice,
): Result<Project, Refusal> {
  const index = project.schemes.findIndex((scheme) => scheme.id === schemeId)
  const scheme = project.schemes[index]
  if (!scheme) return fail({ code: 'no-scheme', message: `There is no scheme "${schemeId}" in this project.` })
  const missing = surfaceIds.find((id) => surfaceKind(project, id) === null)
  if (missing !== undefined)
    return fail({ code: 'no-surface', message: `There is no surface "${missing}" in this project.` })
  const choices: Record<string, Choice> = { ...scheme.choices }
  for (const id of surfaceIds) choices[id] = change(choiceFor(scheme, id))
  const changed: Scheme = { ...scheme, choices }
  return ok({ ...project, schemes: project.schemes.with(index, changed) })
}

import type { Room, SurfaceFacts } from '#analysis/room.ts'
import { AS_IS, type Catalogue, type SurfaceKind } from '#assemblies/assembly.ts'
import { withOwnAssemblies } from '#assemblies/ownAssembly.ts'
import { validateOutline } from '#geometry/inset/validate.ts'
import { airProblems } from '#project/airProblems.ts'
import { ownAssembliesProblems } from '#project/ownAssemblies.ts'
import { type FileProblem, problem, repeatedIds } from '#project/problems.ts'
import type { Project } from '#project/project.ts'
import { diagonalProblems, partitionProblems, standingProblems } from '#project/references.ts'
import { targetProblems } from '#project/targetProblems.ts'

/** What a file of the right shape can still say wrong: names of nothing, walls out of order, an outline that crosses itself. */
export function meaningProblems(project: Project, builtIn: Catalogue): readonly FileProblem[] {
  const catalogue = withOwnAssemblies(builtIn, project.assemblies)
  return [
    ...repeatedIds(project.assemblies, 'assemblies'),
    ...ownAssembliesProblems(project.assemblies, builtIn),
    ...repeatedIds(project.rooms, 'rooms'),
    ...repeatedIds(
      project.rooms.flatMap((room) => [...room.walls, room.ceiling, room.floor]),
      'the walls, ceilings and floors',
    ),
    ...repeatedIds(project.schemes, 'schemes'),
    ...project.rooms.flatMap((room, i) => roomProblems(room, `rooms[${i}]`, catalogue)),
    ...schemeProblems(project, catalogue),
    ...proposalProblem(project),
    ...repeatedIds(project.partitions, 'partitions'),
    ...repeatedIds(project.underlays, 'underlays'),
    ...partitionProblems(project, catalogue),
    ...standingProblems(project),
    ...targetProblems(project),
    ...airProblems(project, catalogue),
    ...repeatedNames(project),
  ]
}

function roomProblems(room: Room, at: string, catalogue: Catalogue): FileProblem[] {
  return [
    ...repeatedIds(room.corners, `${at}.corners`),
    ...wallOrder(room, at),
    ...room.walls.flatMap((wall, i) => existingProblem(wall, 'wall', `${at}.walls[${i}]`, catalogue)),
    ...existingProblem(room.ceiling, 'ceiling', `${at}.ceiling`, catalogue),
    ...existingProblem(room.floor, 'floor', `${at}.floor`, catalogue),
    ...repeatedIds(room.obstacles, `${at}.obstacles`),
    ...repeatedIds(room.drops, `${at}.drops`),
    ...repeatedIds(room.openings, `${at}.openings`),
    ...repeatedIds(
      [...room.heights, ...room.ceilingParts.flatMap((part) => part.heights)],
      `${at}, heights of the room and of its ceiling parts`,
    ),
    ...repeatedIds(room.ceilingParts, `${at}.ceilingParts`),
    ...repeatedIds(room.furniture, `${at}.furniture`),
    ...repeatedIds(room.diagonals, `${at}.diagonals`),
    ...diagonalProblems(room, at),
    ...openingProblems(room, at),
    ...room.obstacles.flatMap((obstacle, i) => ringProblem(obstacle, `${at}.obstacles[${i}]`)),
    ...room.drops.flatMap((drop, i) => ringProblem(drop, `${at}.drops[${i}]`)),
    ...room.ceilingParts.flatMap((part, i) => ringProblem(part, `${at}.ceilingParts[${i}]`)),
    ...outlineProblem(room, at),
  ]
}

function wallOrder(room: Room, at: string): FileProblem[] {
  const { corners, walls } = room
  if (walls.length !== corners.length) {
    return [
      problem(`${at}.walls`, `a room of ${corners.length} corners needs ${corners.length} walls, not ${walls.length}`),
    ]
  }
  return walls.flatMap((wall, i) => {
    const from = corners[i]?.id
    const to = corners[(i + 1) % corners.length]?.id
    if (wall.from === from && wall.to === to) return []
    return [problem(`${at}.walls[${i}]`, `wall "${wall.id}" has to run from corner "${from}" to corner "${to}"`)]
  })
}

function existingProblem(facts: SurfaceFacts, kind: SurfaceKind, at: string, catalogue: Catalogue): FileProblem[] {
  const existing = catalogue.existing.get(facts.existing)
  if (!existing) return [problem(`${at}.existing`, `existing construction "${facts.existing}" is not in the catalogue`)]
  if (existing.surface === kind) return []
  return [
    problem(`${at}.existing`, `existing construction "${facts.existing}" is for a ${existing.surface}, not a ${kind}`),
  ]
}

function openingProblems(room: Room, at: string): FileProblem[] {
  return room.openings.flatMap((opening, i) => {
    const index = room.walls.findIndex((wall) => wall.id === opening.wall)
    const from = room.corners[index]
    const to = room.corners[(index + 1) % room.corners.length]
    const where = `${at}.openings[${i}]`
    if (!from || !to)
      return [problem(`${where}.wall`, `"${opening.name}" stands in wall "${opening.wall}", which is not there`)]
    const length = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
    if (opening.fromMm + opening.widthMm <= length + 1) return []
    return [
      problem(where, `"${opening.name}" reaches past the end of Wall ${index + 1} (${Math.round(length)} mm long)`),
    ]
  })
}

function ringProblem(
  { name, corners }: { readonly name: string; readonly corners: Room['obstacles'][number]['corners'] },
  at: string,
): FileProblem[] {
  const refusal = validateOutline(corners.map((corner) => [corner.xMm, corner.yMm] as const))
  return refusal ? [problem(`${at}.corners`, `the sides of "${name}" cross, touch or enclose nothing`)] : []
}

function outlineProblem(room: Room, at: string): FileProblem[] {
  const refusal = validateOutline(room.corners.map((corner) => [corner.xMm, corner.yMm] as const))
  return refusal ? [problem(`${at}.corners`, refusal.message.replace(/\.$/, ''))] : []
}

function schemeProblems(project: Project, catalogue: Catalogue): FileProblem[] {
  const kinds = new Map<string, SurfaceKind>()
  for (const room of project.rooms) {
    for (const wall of room.walls) kinds.set(wall.id, 'wall')
    kinds.set(room.ceiling.id, 'ceiling')
    kinds.set(room.floor.id, 'floor')
  }
  return project.schemes.flatMap((scheme, i) =>
    Object.entries(scheme.choices).flatMap(([surfaceId, choice]) =>
      choiceProblem(kinds.get(surfaceId), surfaceId, choice.assembly, `schemes[${i}].choices.${surfaceId}`, catalogue),
    ),
  )
}

function choiceProblem(
  kind: SurfaceKind | undefined,
  surfaceId: string,
  assemblyId: string,
  at: string,
  catalogue: Catalogue,
): FileProblem[] {
  if (kind === undefined) return [problem(at, `there is no surface "${surfaceId}" in this project`)]
  if (assemblyId === AS_IS) return []
  const assembly = catalogue.assemblies.get(assemblyId)
  if (!assembly) return [problem(`${at}.assembly`, `assembly "${assemblyId}" is not in the catalogue`)]
  if (assembly.surface === kind) return []
  return [problem(`${at}.assembly`, `assembly "${assemblyId}" is for a ${assembly.surface}, not a ${kind}`)]
}

function proposalProblem(project: Project): FileProblem[] {
  if (project.proposal === null || project.schemes.some((scheme) => scheme.id === project.proposal)) return []
  return [problem('proposal', `the proposal "${project.proposal}" is none of the schemes`)]
}

function repeatedNames({ schemes }: Project): FileProblem[] {
  return schemes.flatMap(({ name }, i) =>
    schemes.findIndex((other) => other.name === name) < i
      ? [problem(`schemes[${i}].name`, `two schemes are called "${name}"`)]
      : [],
  )
}

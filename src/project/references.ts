import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import { type FileProblem, problem } from '#project/problems.ts'
import type { Partition, Project } from '#project/project.ts'

/** Partitions that are built of no wall, or whose two sides are not two walls of two rooms. */
export function partitionProblems(project: Project, catalogue: Catalogue): FileProblem[] {
  return project.partitions.flatMap((partition, i) => [
    ...constructionProblem(partition, `partitions[${i}]`, catalogue),
    ...sideProblems(project, partition, i),
  ])
}

function constructionProblem({ construction }: Partition, at: string, catalogue: Catalogue): FileProblem[] {
  const existing = catalogue.existing.get(construction)
  if (existing?.surface === 'wall') return []
  const what = existing
    ? `existing construction "${construction}" is for a ${existing.surface}, not a wall`
    : `existing construction "${construction}" is not in the catalogue`
  return [problem(`${at}.construction`, what)]
}

function sideProblems(project: Project, { name, sides }: Partition, index: number): FileProblem[] {
  const at = `partitions[${index}].sides`
  const missing = sides.flatMap((side, k) => {
    const room = project.rooms.find(({ id }) => id === side.room)
    if (!room) return [problem(`${at}[${k}].room`, `"${name}" has a side in room "${side.room}", which is not there`)]
    if (room.walls.some(({ id }) => id === side.wall)) return []
    return [
      problem(`${at}[${k}].wall`, `"${name}" has wall "${side.wall}" for a side, which is not in room "${side.room}"`),
    ]
  })
  if (missing.length > 0) return missing
  if (sides[0].room === sides[1].room) return [problem(at, `"${name}" needs its two sides in two rooms`)]
  const taken = project.partitions
    .slice(0, index)
    .flatMap((other) => other.sides)
    .find((other) => sides.some((side) => side.wall === other.wall))
  return taken
    ? [problem(at, `"${name}" has wall "${taken.wall}" for a side, which another partition has already`)]
    : []
}

/** Diagonals that name no corner, or one twice. */
export function diagonalProblems(room: Room, at: string): FileProblem[] {
  const corners = new Set(room.corners.map(({ id }) => id))
  return room.diagonals.flatMap(({ id, from, to }, i) => {
    const missing = [from, to].find((corner) => !corners.has(corner))
    const where = `${at}.diagonals[${i}]`
    if (missing !== undefined)
      return [problem(where, `diagonal "${id}" ends at corner "${missing}", which is not there`)]
    return from === to ? [problem(where, `diagonal "${id}" begins and ends at corner "${from}"`)] : []
  })
}

/** What schemes say of obstacles and corners that are not there. */
export function standingProblems(project: Project): FileProblem[] {
  const obstacles = new Set(project.rooms.flatMap((room) => room.obstacles.map(({ id }) => id)))
  return project.schemes.flatMap((scheme, i) => [
    ...(scheme.takenOut ?? []).flatMap((id, k) =>
      obstacles.has(id)
        ? []
        : [problem(`schemes[${i}].takenOut[${k}]`, `there is no obstacle "${id}" to take out in this project`)],
    ),
    ...runsThroughProblems(project, scheme, `schemes[${i}].runsThrough`),
  ])
}

function runsThroughProblems(project: Project, { runsThrough }: Scheme, at: string): FileProblem[] {
  const walls = project.rooms.flatMap((room) => room.walls)
  return Object.entries(runsThrough ?? {}).flatMap(([corner, wallId]) => {
    const wall = walls.find(({ id, from, to }) => id === wallId && (from === corner || to === corner))
    if (wall) return []
    const isThere = walls.some(({ from }) => from === corner)
    return [
      problem(
        `${at}.${corner}`,
        isThere
          ? `wall "${wallId}" does not meet corner "${corner}"`
          : `there is no corner "${corner}" in this project`,
      ),
    ]
  })
}

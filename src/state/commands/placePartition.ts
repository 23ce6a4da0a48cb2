import type { Partition, PartitionSide, Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { named } from '#state/commands/check.ts'
import { partitionDepths } from '#state/commands/partitionSides.ts'
import { wallMoved } from '#state/commands/wall.ts'
import type { Millimetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** What can be said anew of a partition. */
export type PartitionPatch = Partial<Pick<Partition, 'name' | 'construction' | 'placement'>>

/** The project with a partition renamed, built of something else or placed otherwise on its line; both walls follow. */
export function placedPartition(project: Project, id: string, patch: PartitionPatch): Result<Project, Refusal> {
  const index = project.partitions.findIndex((partition) => partition.id === id)
  const former = project.partitions[index]
  if (!former) return fail({ code: 'no-partition', message: `There is no partition "${id}" in this project any more.` })
  const partition = { ...former, ...patch, name: (patch.name ?? former.name).trim() }
  const refused = named('A partition', partition.name)
  if (refused) return fail(refused)
  const [before, after] = [partitionDepths(project, former), partitionDepths(project, partition)]
  if (!after.ok) return after
  if (!before.ok) return before
  const [first, second] = partition.sides
  const moved = movedBy(project, first, after.value.leftMm - before.value.leftMm)
  const both = moved.ok ? movedBy(moved.value, second, after.value.rightMm - before.value.rightMm) : moved
  if (!both.ok) return both
  const partitions = both.value.partitions.with(index, partition)
  return ok({ ...withConstruction(both.value, partition), partitions })
}

function movedBy(project: Project, side: PartitionSide, inward: Millimetres): Result<Project, Refusal> {
  return inward === 0 ? ok(project) : wallMoved(project, side.room, side.wall, inward, false)
}

/** Both walls say what stands behind them now. */
function withConstruction(project: Project, { construction, sides }: Partition): Project {
  const ids = new Set(sides.map(({ wall }) => wall))
  const rooms = project.rooms.map((room) =>
    room.walls.some((wall) => ids.has(wall.id) && wall.existing !== construction)
      ? { ...room, walls: room.walls.map((wall) => (ids.has(wall.id) ? { ...wall, existing: construction } : wall)) }
      : room,
  )
  return { ...project, rooms }
}

import type { PlanPoint, Room } from '#analysis/room.ts'
import { layersDepth } from '#assemblies/layer.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Partition, PartitionSide, Placement, Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import type { Millimetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Depth a partition takes to the left and to the right of the line it was drawn on, mm. */
export interface Depths {
  readonly leftMm: Millimetres
  readonly rightMm: Millimetres
}

/** Depth of a partition on either side of its line; refused where its construction is not one of a wall. */
export function partitionDepths(
  project: Project,
  { construction, placement }: Pick<Partition, 'construction' | 'placement'>,
): Result<Depths, Refusal> {
  const existing = projectCatalogue(project).existing.get(construction)
  if (existing?.surface !== 'wall') {
    const message = `There is no wall construction "${construction}"; choose what the partition is built of.`
    return fail({ code: 'no-construction', message })
  }
  const depth = layersDepth(existing.layers)
  const leftMm = depth * LEFT_SHARE[placement]
  return ok({ leftMm, rightMm: depth - leftMm })
}

const LEFT_SHARE: Readonly<Record<Placement, number>> = { first: 1, middle: 0.5, second: 0 }

/** The partition one of whose sides is this wall. */
export function partitionAt(project: Project, roomId: string, wallId: string): Partition | undefined {
  return project.partitions.find(({ sides }) => sides.some((side) => side.room === roomId && side.wall === wallId))
}

/** The other side of the partition that has this wall; null: it is no partition's. */
export function otherSide(project: Project, roomId: string, wallId: string): PartitionSide | null {
  const sides = partitionAt(project, roomId, wallId)?.sides
  return sides?.find((side) => side.room !== roomId || side.wall !== wallId) ?? null
}

/** The partition that ends at a corner of a room. */
export function partitionEndingAt(project: Project, room: Room, cornerId: string): Partition | undefined {
  const walls = room.walls.filter((wall) => wall.from === cornerId || wall.to === cornerId)
  return project.partitions.find(({ sides }) =>
    sides.some((side) => side.room === room.id && walls.some((wall) => wall.id === side.wall)),
  )
}

/** How far off a partition's line its corner may be put, mm. */
const ON_LINE_MM = 0.5

/** Whether a corner that ends a partition would still lie on its line. */
export function staysInLine(room: Room, partition: Partition, cornerId: string, { xMm, yMm }: PlanPoint): boolean {
  const wall = room.walls.find(({ id }) => partition.sides.some((side) => side.room === room.id && side.wall === id))
  const [from, to] = [wall?.from, wall?.to].map((id) => room.corners.find((corner) => corner.id === id))
  if (!from || !to) return true
  const length = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
  const across = ((xMm - from.xMm) * (to.yMm - from.yMm) - (yMm - from.yMm) * (to.xMm - from.xMm)) / length
  const ahead = (xMm - from.xMm) * (to.xMm - from.xMm) + (yMm - from.yMm) * (to.yMm - from.yMm)
  return Math.abs(across) <= ON_LINE_MM && (cornerId === to.id ? ahead > 0 : ahead < length * length)
}

/** The refusal to move or delete a corner by which a partition would lose its depth. */
export function tiedCorner(room: Room, { name }: Partition, cornerId: string): Refusal {
  const number = room.corners.findIndex(({ id }) => id === cornerId) + 1
  const message = `Corner ${number} ends "${name}", which two rooms share; move the partition's wall, or join the rooms first.`
  return { code: 'partition', message }
}

/** The refusal to part a wall that is one side of a partition. */
export function tiedWall(room: Room, { name }: Partition, wallId: string): Refusal {
  const number = room.walls.findIndex(({ id }) => id === wallId) + 1
  const message = `Wall ${number} is one side of "${name}", which two rooms share; it has no corners of its own. Join the rooms first.`
  return { code: 'partition', message }
}

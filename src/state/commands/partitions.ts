import type { Point } from '#geometry/polygon.ts'
import type { Partition } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { type Cut, cutProject } from '#state/commands/cutRoom.ts'
import { joinedRooms } from '#state/commands/joinRooms.ts'
import { placedPartition } from '#state/commands/placePartition.ts'

/**
 * Cuts a room in two with a partition along a line, which is extended to the walls it meets. The first room lies to the
 * left as one looks from `from` to `to`.
 */
export function cutRoom(roomId: string, from: Point, to: Point, cut: Cut): Command {
  return { label: 'cut the room', apply: (project) => cutProject(project, roomId, [from, to], cut) }
}

/** Renames a partition, builds it of something else or puts its depth on another side of its line. */
export function changePartition(
  id: string,
  patch: { readonly name?: string; readonly construction?: string; readonly placement?: Partition['placement'] },
): Command {
  return { label: 'change partition', apply: (project) => placedPartition(project, id, patch) }
}

/** Takes a partition out: its two rooms become one. */
export function joinRooms(partitionId: string): Command {
  return { label: 'join rooms', apply: (project) => joinedRooms(project, partitionId) }
}

import type { Room } from '#analysis/room.ts'
import type { Choice, Scheme } from '#analysis/scheme.ts'
import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { ok } from '#units/result.ts'

/**
 * A command that changes which walls there are, with every scheme's choices brought along: a new wall takes the choice
 * of the wall it follows (one it was split from, or the former first wall of an outline drawn anew), and choices for
 * walls that are gone go with them.
 */
export function keepChoices(roomId: string, command: Command): Command {
  return {
    label: command.label,
    apply: (project) => {
      const outcome = command.apply(project)
      return outcome.ok ? ok(withChoices(roomId, project, outcome.value)) : outcome
    },
  }
}

function withChoices(roomId: string, before: Project, after: Project): Project {
  const former = before.rooms.find((room) => room.id === roomId)
  const room = after.rooms.find((candidate) => candidate.id === roomId)
  if (!former || !room || former === room) return after
  const follows = followedWalls(former, room)
  const gone = new Set(former.walls.map((wall) => wall.id))
  for (const wall of room.walls) gone.delete(wall.id)
  return { ...after, schemes: after.schemes.map((scheme) => chosen(scheme, follows, gone)) }
}

/** For every wall that is new: the former wall whose choice it takes. */
function followedWalls(former: Room, room: Room): ReadonlyMap<string, string> {
  const there = new Set(former.walls.map((wall) => wall.id))
  const follows = new Map<string, string>()
  let last = former.walls[0]?.id
  for (const { id } of room.walls) {
    if (there.has(id)) last = id
    else if (last !== undefined) follows.set(id, last)
  }
  return follows
}

function chosen(scheme: Scheme, follows: ReadonlyMap<string, string>, gone: ReadonlySet<string>): Scheme {
  const choices: Record<string, Choice> = {}
  for (const [id, choice] of Object.entries(scheme.choices)) if (!gone.has(id)) choices[id] = choice
  for (const [id, from] of follows) {
    const choice = scheme.choices[from]
    if (choice) choices[id] = choice
  }
  return { ...scheme, choices }
}

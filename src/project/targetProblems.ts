import { octaveList } from '#acoustics/bands.ts'
import type { Room } from '#analysis/room.ts'
import type { Receiver } from '#analysis/target.ts'
import { type FileProblem, problem, repeatedIds } from '#project/problems.ts'
import type { Project } from '#project/project.ts'

/** What receivers and sources can say wrong: rooms, surfaces and sources that are not there, and what a level cannot do without. */
export function targetProblems({ rooms, sources, receivers }: Project): FileProblem[] {
  const heard = new Set(sources.map(({ id }) => id))
  return [
    ...repeatedIds(sources, 'sources'),
    ...repeatedIds(receivers, 'receivers'),
    ...receivers.flatMap((receiver, i) => {
      const at = `receivers[${i}]`
      return [
        ...sourceProblem(receiver, heard, at),
        ...roomProblems(receiver, rooms, at),
        ...absorptionProblem(receiver, at),
        ...measuredProblems(receiver, at),
      ]
    }),
  ]
}

function sourceProblem({ name, source }: Receiver, heard: ReadonlySet<string>, at: string): FileProblem[] {
  if (source === null || heard.has(source)) return []
  return [problem(`${at}.source`, `"${name}" hears source "${source}", which is not there`)]
}

function roomProblems({ name, room: roomId, through }: Receiver, rooms: readonly Room[], at: string): FileProblem[] {
  const room = rooms.find(({ id }) => id === roomId)
  if (!room) return [problem(`${at}.room`, `"${name}" hears room "${roomId}", which is not there`)]
  const surfaces = new Set([...room.walls, room.ceiling, room.floor].map(({ id }) => id))
  return through.flatMap(({ surface }, k) => {
    const where = `${at}.through[${k}].surface`
    if (!surfaces.has(surface)) {
      return [problem(where, `"${name}" is behind surface "${surface}", which is not in room "${roomId}"`)]
    }
    if (through.findIndex((part) => part.surface === surface) === k) return []
    return [problem(where, `"${name}" names surface "${surface}" twice`)]
  })
}

function absorptionProblem({ name, place }: Receiver, at: string): FileProblem[] {
  if (place.kind !== 'room' || place.furnishing !== 'typed' || place.absorptionM2 !== null) return []
  const what = `"${name}" has its absorption typed, so it needs a value; without one its room is "furnished" or "bare"`
  return [problem(`${at}.place.absorptionM2`, what)]
}

function measuredProblems({ measured }: Receiver, at: string): FileProblem[] {
  return [
    ...repeatedIds(measured, `${at}.measured`),
    ...measured.flatMap(({ name, differenceDb }, k) =>
      octaveList(differenceDb).some((value) => value !== null)
        ? []
        : [problem(`${at}.measured[${k}].differenceDb`, `"${name}" was measured, yet has no value in any octave`)],
    ),
  ]
}

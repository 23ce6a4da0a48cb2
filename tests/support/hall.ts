import type { Opening } from '#analysis/room.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'
import { addOpening } from '#state/commands/openings.ts'
import { drawOutline } from '#state/commands/outline.ts'
import { usualOpening } from '#state/usualThings.ts'
import { openSample } from './samples.ts'

/** Bays along each long side; every bay brings four walls. */
const BAYS = 25
const BAY = 2300
const DEEP = 400
const WIDE = 20_000

/** An invented hall of 200 walls (two long sides with piers between bays) and 40 openings, lined all round. */
export function bigHall(): Project {
  const sample = openSample('garage')
  const roomId = sample.rooms[0]?.id ?? ''
  let project = applied(sample, drawOutline(roomId, outline()))
  const walls = project.rooms[0]?.walls ?? []
  const wide = walls.filter((_, i) => i % 4 === 2).slice(0, 40)
  for (const [i, { id }] of wide.entries()) {
    const room = project.rooms[0]
    if (!room) throw new Error('no room')
    const kind: Opening['kind'] = i % 2 === 0 ? 'door' : 'window'
    project = applied(project, addOpening(roomId, usualOpening(kind, id, 100, 'mm', room)))
  }
  const assembly = Object.values(sample.schemes[2]?.choices ?? {})[0]?.assembly ?? 'as-is'
  const choices = Object.fromEntries(walls.map(({ id }) => [id, { assembly, removeLining: false }]))
  return {
    ...project,
    name: 'Hall of 200 walls',
    units: 'mm',
    schemes: [{ id: 'scheme-1', name: 'A', choices }],
    proposal: null,
  }
}

function outline(): readonly Point[] {
  const side = (y: number, inward: number): Point[] =>
    Array.from({ length: BAYS }, (_, bay): Point[] => {
      const x = bay * BAY
      return [
        [x, y + inward],
        [x + BAY / 4, y + inward],
        [x + BAY / 4, y],
        [x + BAY, y],
      ]
    }).flat()
  const low = side(0, DEEP)
  const high = side(WIDE, -DEEP).map(([x, y]): Point => [BAYS * BAY - x, y])
  return [...low, ...high]
}

function applied(project: Project, command: ReturnType<typeof drawOutline>): Project {
  const outcome = command.apply(project)
  if (!outcome.ok) throw new Error(outcome.error.message)
  return outcome.value
}

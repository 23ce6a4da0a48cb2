import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { addBox } from '#state/commands/boxes.ts'
import { addDrop } from '#state/commands/drops.ts'
import { addFurniture } from '#state/commands/furniture.ts'
import { addHeight } from '#state/commands/heights.ts'
import { addObstacle } from '#state/commands/obstacles.ts'
import { addOpening } from '#state/commands/openings.ts'
import { usualOpening } from '#state/usualThings.ts'
import type { Thing } from '#state/view.ts'
import { boxesOf, type PlanRoom } from '#ui/canvas/planRoom.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A copy stands so far to the right and down the page, mm. */
const AWAY = 300

interface Placed {
  readonly xMm: Millimetres
  readonly yMm: Millimetres
}

/** A second one beside the first, under a name of its own; null where that has no sense (a partition, a picture). */
export function duplicate(project: Project, given: PlanRoom, { kind, id }: Thing): Command | null {
  const roomId = given.id
  const room = project.rooms.find((candidate) => candidate.id === roomId)
  if (!room) return null
  const find = <Part extends { readonly id: string }>(list: readonly Part[]) => list.find((part) => part.id === id)
  const taken = [...room.openings, ...room.furniture, ...room.obstacles, ...room.drops, ...room.ceilingParts]
  const named = (name: string) =>
    freeName(
      name,
      taken.map((other) => other.name),
    )
  switch (kind) {
    case 'opening': {
      const own = find(room.openings)
      if (!own) return null
      const { fromMm } = usualOpening(own.kind, own.wall, own.fromMm + own.widthMm, project.units, room)
      return addOpening(roomId, { ...without(own), fromMm, name: named(own.name) })
    }
    case 'furniture': {
      const own = find(room.furniture)
      return own ? addFurniture(roomId, { ...shifted(without(own)), name: named(own.name) }) : null
    }
    case 'obstacle': {
      const own = find(room.obstacles)
      return own
        ? addObstacle(roomId, { ...without(own), corners: own.corners.map(shifted), name: named(own.name) })
        : null
    }
    case 'drop': {
      const own = find(room.drops)
      return own ? addDrop(roomId, { ...without(own), corners: own.corners.map(shifted), name: named(own.name) }) : null
    }
    case 'height': {
      const own = find(room.heights)
      return own ? addHeight(roomId, null, shifted(without(own))) : null
    }
    case 'box': {
      const own = find(boxesOf(given))
      const names = boxesOf(given).map(({ name }) => name)
      return own && given.inScheme
        ? addBox(given.inScheme.id, { ...shifted(without(own)), name: freeName(own.name, names) })
        : null
    }
    case 'ceiling-part':
    case 'partition':
    case 'underlay':
      return null
    default:
      return null
  }
}

function without<Part extends { readonly id: string }>({ id: _, ...rest }: Part): Omit<Part, 'id'> {
  return rest
}

function shifted<Part extends Placed>(part: Part): Part {
  return { ...part, xMm: part.xMm + AWAY, yMm: part.yMm - AWAY }
}

/** Door, Door 2, Door 3: the number counts on. */
export function freeName(name: string, taken: readonly string[]): string {
  const plain = name.replace(/ \d+$/, '')
  let next = name
  for (let n = 2; taken.includes(next); n += 1) next = `${plain} ${n}`
  return next
}

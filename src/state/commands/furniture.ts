import type { Furniture, PlanPoint, Room } from '#analysis/room.ts'
import type { Command, Refusal } from '#state/command.ts'
import { named, notNegative, onThePlan, positive } from '#state/commands/check.ts'
import { changedEntry, editRoom, idGiver, noThing } from '#state/commands/edit.ts'
import { footprintRefusal } from '#state/commands/rings.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Puts something into the room that it has to hold. */
export function addFurniture(roomId: string, piece: Omit<Furniture, 'id'>): Command {
  return {
    label: `add ${piece.name.trim()}`,
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const added = upright({ ...piece, id: idGiver(project)('furniture'), name: piece.name.trim() })
        return checkedFurniture({ ...room, furniture: [...room.furniture, added] }, added)
      }),
  }
}

export function changeFurniture(roomId: string, id: string, patch: Partial<Omit<Furniture, 'id'>>): Command {
  return {
    label: patch.angleDeg === undefined ? 'change furniture' : 'turn furniture',
    apply: (project) => editRoom(project, roomId, (room) => withFurniture(room, id, (it) => ({ ...it, ...patch }))),
  }
}

/** The room with one piece changed; refused where it cannot stand there. */
export function withFurniture(room: Room, id: string, change: (piece: Furniture) => Furniture): Result<Room, Refusal> {
  const changed = changedEntry(room.furniture, id, (piece) => upright(change(piece)))
  if (!changed) return noThing('furniture', id)
  return checkedFurniture({ ...room, furniture: changed.entries }, changed.entry)
}

/** Its footprint without clearances. */
export function footprint({ xMm, yMm, widthMm, depthMm, angleDeg }: Furniture): readonly PlanPoint[] {
  const [cos, sin] = [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)]
  const corners: readonly (readonly [number, number])[] = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ]
  return corners.map(([sx, sy]) => {
    const [x, y] = [(sx * widthMm) / 2, (sy * depthMm) / 2]
    return { xMm: xMm + x * cos - y * sin, yMm: yMm + x * sin + y * cos }
  })
}

/** An angle between -180 and 180 degrees says the same as any other. */
function upright(piece: Furniture): Furniture {
  const { angleDeg } = piece
  if (!Number.isFinite(angleDeg) || Math.abs(angleDeg) <= 180) return piece
  return { ...piece, angleDeg: angleDeg - 360 * Math.round(angleDeg / 360) }
}

function checkedFurniture(room: Room, piece: Furniture): Result<Room, Refusal> {
  const name = `"${piece.name}"`
  const { clearance } = piece
  const refused =
    named('A piece of furniture', piece.name) ??
    positive(`${name}: its width`, piece.widthMm) ??
    positive(`${name}: its depth`, piece.depthMm) ??
    positive(`${name}: its height`, piece.heightMm) ??
    notNegative(`${name}: the space in front of it`, clearance.frontMm) ??
    notNegative(`${name}: the space behind it`, clearance.backMm) ??
    notNegative(`${name}: the space at its left`, clearance.leftMm) ??
    notNegative(`${name}: the space at its right`, clearance.rightMm) ??
    onThePlan(name, piece.xMm, piece.yMm) ??
    angle(name, piece.angleDeg) ??
    footprintRefusal(room, piece.name, footprint(piece))
  return refused ? fail(refused) : ok(room)
}

function angle(name: string, angleDeg: number): Refusal | null {
  if (Number.isFinite(angleDeg)) return null
  return { code: 'not-an-angle', message: `${name}: its angle has to be a number of degrees; it was kept as it was.` }
}

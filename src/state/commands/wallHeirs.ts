import type { Corner, Room, Wall } from '#analysis/room.ts'

/**
 * For every wall that is gone: the wall that ran on over its place when the corner between them went. A wall that only slid
 * back into line, so that a short one beside it was spent, took over nothing: both of its ends moved.
 */
export function wallHeirs(former: Room, room: Room): ReadonlyMap<string, string> {
  const heirs = new Map<string, string>()
  const now = new Map(room.walls.map((wall) => [wall.id, wall]))
  const before = new Map(former.walls.map((wall) => [wall.id, wall]))
  for (const gone of former.walls.filter(({ id }) => !now.has(id))) {
    const heir = room.walls.find(({ from, to }) => to === gone.to || from === gone.from)
    const was = heir && before.get(heir.id)
    if (heir && was && keepsOtherEnd(former, room, was, heir, gone)) heirs.set(gone.id, heir.id)
  }
  return heirs
}

function keepsOtherEnd(former: Room, room: Room, was: Wall, heir: Wall, gone: Wall): boolean {
  const [one, other] = heir.to === gone.to ? [was.from, heir.from] : [was.to, heir.to]
  const [from, to] = [cornerOf(former, one), cornerOf(room, other)]
  return one === other && from?.xMm === to?.xMm && from?.yMm === to?.yMm
}

function cornerOf({ corners }: Room, id: string): Corner | undefined {
  return corners.find((corner) => corner.id === id)
}

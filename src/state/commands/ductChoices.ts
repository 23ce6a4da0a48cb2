import type { Room } from '#analysis/room.ts'
import type { Scheme, SilencerBox } from '#analysis/scheme.ts'

/** The scheme without what it does to ducts that are not there; boxes that served one serve none. */
export function withDuctsOf(scheme: Scheme, isThere: (id: string) => boolean): Scheme {
  const { ducts, boxes, ...rest } = scheme
  const isServed = (box: SilencerBox) => box.duct === null || isThere(box.duct)
  if (Object.keys(ducts ?? {}).every(isThere) && (boxes ?? []).every(isServed)) return scheme
  const kept = Object.entries(ducts ?? {}).filter(([id]) => isThere(id))
  return {
    ...rest,
    ...(kept.length > 0 && { ducts: Object.fromEntries(kept) }),
    ...(boxes && { boxes: boxes.map((box) => (isServed(box) ? box : { ...box, duct: null })) }),
  }
}

/** The scheme without boxes in rooms that are not there; one serves only a duct of its own room. */
export function withBoxesOf(scheme: Scheme, rooms: readonly Room[]): Scheme {
  const { boxes, ...rest } = scheme
  if (!boxes) return scheme
  const kept = boxes.flatMap((box) => {
    const room = rooms.find(({ id }) => id === box.room)
    if (!room) return []
    const serves = box.duct === null || (room.ducts ?? []).some(({ id }) => id === box.duct)
    return [serves ? box : { ...box, duct: null }]
  })
  return kept.length > 0 ? { ...rest, boxes: kept } : rest
}

/** The scheme with every box of one room in another. */
export function withBoxesMoved(scheme: Scheme, moves: (box: SilencerBox) => string): Scheme {
  return scheme.boxes ? { ...scheme, boxes: scheme.boxes.map((box) => ({ ...box, room: moves(box) })) } : scheme
}

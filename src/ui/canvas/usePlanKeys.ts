import { type KeyboardEvent as ReactKeyboardEvent, useEffect } from 'react'
import type { Room } from '#analysis/room.ts'
import { deleteCorner, moveCorner } from '#state/commands/outline.ts'
import type { OutlineDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { type Session, useSession, useView } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'
import { runShortcut, type ShortcutHandlers } from '#ui/shortcuts.ts'

/** Keys that work while the plan has the focus, and those of an outline being drawn. */
export function usePlanKeys(room: Room, view: PlanFrame, outline: OutlineDrawing) {
  const session = useSession()
  const isDrawing = useView((state) => state.tool === 'draw')
  useDrawKeys(isDrawing, outline)
  return (event: ReactKeyboardEvent) => {
    if (isDrawing) return
    const walk = walkHandlers(session, room)
    runShortcut(event.nativeEvent, ['on the plan'], { ...walk, ...viewHandlers(view) })
  }
}

function viewHandlers(view: PlanFrame): ShortcutHandlers {
  const middle = [view.size.width / 2, view.size.height / 2] as const
  return {
    fit: view.fit,
    'zoom-in': () => view.zoom(1.25, middle),
    'zoom-out': () => view.zoom(0.8, middle),
  }
}

function walkHandlers(session: Session, room: Room): ShortcutHandlers {
  const cornerId = session.view.getState().cornerId
  const arrow = (x: number, y: number) => (event: KeyboardEvent) => {
    if (cornerId !== null) nudgeCorner(session, room, cornerId, [x, y], stepOf(event))
    else if (event.shiftKey) extendWalls(session, room, x - y)
    else walkWalls(session, room, x - y)
  }
  const walk = (by: number) => () =>
    cornerId === null ? walkWalls(session, room, by) : walkCorners(session, room, cornerId, by)
  return {
    next: walk(1),
    previous: walk(-1),
    'move-left': arrow(-1, 0),
    'move-right': arrow(1, 0),
    'move-up': arrow(0, 1),
    'move-down': arrow(0, -1),
    'corner-or-wall': () => swapCornerAndWall(session, room),
    ...(cornerId === null ? {} : { 'delete-corner': () => session.document.run(deleteCorner(room.id, cornerId)) }),
  }
}

/** 10 mm, with Shift 100, with Alt 1. */
function stepOf(event: KeyboardEvent): number {
  if (event.shiftKey) return 100
  return event.altKey ? 1 : 10
}

function nudgeCorner(
  session: Session,
  room: Room,
  cornerId: string,
  [x, y]: readonly [number, number],
  step: number,
): void {
  const corner = room.corners.find((candidate) => candidate.id === cornerId)
  if (corner) session.document.run(moveCorner(room.id, cornerId, corner.xMm + x * step, corner.yMm + y * step))
}

function walkWalls({ view }: Session, room: Room, by: number): void {
  const { surfaceIds } = view.getState()
  const ids = [...room.walls, room.ceiling, room.floor].map((surface) => surface.id)
  const id = neighbour(ids, surfaceIds.at(-1), by)
  if (id !== undefined) view.setState({ surfaceIds: [id], cornerId: null })
}

/** Takes the neighbouring wall into the selection; going back over one just taken lets go of it. */
function extendWalls({ view }: Session, room: Room, by: number): void {
  const { surfaceIds } = view.getState()
  const ids = room.walls.map((wall) => wall.id)
  const id = neighbour(ids, surfaceIds.at(-1), by)
  if (id === undefined) return
  const goesBack = surfaceIds.at(-2) === id
  const extended = goesBack ? surfaceIds.slice(0, -1) : [...surfaceIds.filter((other) => other !== id), id]
  view.setState({ surfaceIds: extended, cornerId: null })
}

function walkCorners({ view }: Session, room: Room, cornerId: string, by: number): void {
  const id = neighbour(
    room.corners.map((corner) => corner.id),
    cornerId,
    by,
  )
  if (id !== undefined) view.setState({ cornerId: id })
}

function neighbour(ids: readonly string[], now: string | undefined, by: number): string | undefined {
  const at = now === undefined ? -1 : ids.indexOf(now)
  if (at < 0) return by > 0 ? ids[0] : ids.at(-1)
  return ids[(at + by + ids.length) % ids.length]
}

function swapCornerAndWall({ view }: Session, room: Room): void {
  const { cornerId, surfaceIds } = view.getState()
  if (cornerId !== null) {
    const wall = room.walls.find((candidate) => candidate.from === cornerId)
    view.setState({ cornerId: null, surfaceIds: wall ? [wall.id] : surfaceIds })
    return
  }
  const wall = room.walls.find((candidate) => candidate.id === surfaceIds.at(-1)) ?? room.walls[0]
  if (wall) view.setState({ cornerId: wall.from, surfaceIds: [wall.id] })
}

/** While an outline is drawn its keys work wherever the focus is, except in fields and on buttons. */
function useDrawKeys(isDrawing: boolean, outline: OutlineDrawing): void {
  const { draw } = useShell()
  useEffect(() => {
    if (!isDrawing) return
    const listen = (event: KeyboardEvent) => {
      const target = event.target
      if (target instanceof Element && target.closest('input, textarea, select, button, a, summary')) return
      runShortcut(event, ['while drawing'], { 'close-outline': outline.close, 'take-back': draw.takeBack })
    }
    window.addEventListener('keydown', listen)
    return () => window.removeEventListener('keydown', listen)
  })
}

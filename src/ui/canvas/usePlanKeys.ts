import { type KeyboardEvent as ReactKeyboardEvent, useEffect } from 'react'
import type { Room } from '#analysis/room.ts'
import { deleteCorner, moveCorner } from '#state/commands/outline.ts'
import type { PlanRoom } from '#ui/canvas/planRoom.ts'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { neighbour, stepOf, thingHandlers, walkAll } from '#ui/canvas/thingKeys.ts'
import type { OutlineDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { type Session, useSession, useView } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'
import { runShortcut, type ShortcutHandlers } from '#ui/shortcuts.ts'

export interface PlanKeyInput {
  readonly room: PlanRoom
  readonly view: PlanFrame
  readonly outline: OutlineDrawing
  /** Enter while a new thing is in the hand. */
  putInMiddle(): void
  openMenu(): void
}

/** Keys that work while the plan has the focus, and those of an outline being drawn. */
export function usePlanKeys({ room, view, outline, putInMiddle, openMenu }: PlanKeyInput) {
  const session = useSession()
  const tool = useView((state) => state.tool)
  useDrawKeys(tool === 'draw', outline)
  return (event: ReactKeyboardEvent) => {
    if (tool === 'draw') return
    const own = { ...viewHandlers(view), menu: openMenu }
    if (tool === 'add' || tool === 'cut') {
      const put = (key: KeyboardEvent) => (key.repeat ? undefined : putInMiddle())
      runShortcut(event.nativeEvent, ['while adding'], { put }) || runShortcut(event.nativeEvent, ['on the plan'], own)
      return
    }
    runShortcut(event.nativeEvent, ['on the plan'], { ...walkHandlers(session, room), ...own })
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

function walkHandlers(session: Session, room: PlanRoom): ShortcutHandlers {
  const { cornerId, thing } = session.view.getState()
  if (thing !== null) return thingHandlers(session, room, thing)
  const arrow = (x: number, y: number) => (event: KeyboardEvent) => {
    if (cornerId !== null) nudgeCorner(session, room, cornerId, [x, y], stepOf(event))
    else if (event.shiftKey) extendWalls(session, room, x - y)
    else walkWalls(session, room, x - y)
  }
  const walk = (by: number) => () =>
    cornerId === null ? walkAll(session, room, by) : walkCorners(session, room, cornerId, by)
  return {
    next: walk(1),
    previous: walk(-1),
    'move-left': arrow(-1, 0),
    'move-right': arrow(1, 0),
    'move-up': arrow(0, 1),
    'move-down': arrow(0, -1),
    'corner-or-wall': () => swapCornerAndWall(session, room),
    ...(cornerId === null ? {} : { delete: () => session.document.run(deleteCorner(room.id, cornerId)) }),
  }
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
  const id = neighbour(ids, ids.indexOf(surfaceIds.at(-1) ?? ''), by)
  if (id !== undefined) view.setState({ ...NOTHING_SELECTED, surfaceIds: [id] })
}

/** Takes the neighbouring wall into the selection; going back over one just taken lets go of it. */
function extendWalls({ view }: Session, room: Room, by: number): void {
  const { surfaceIds } = view.getState()
  const ids = room.walls.map((wall) => wall.id)
  const id = neighbour(ids, ids.indexOf(surfaceIds.at(-1) ?? ''), by)
  if (id === undefined) return
  const goesBack = surfaceIds.at(-2) === id
  const extended = goesBack ? surfaceIds.slice(0, -1) : [...surfaceIds.filter((other) => other !== id), id]
  view.setState({ ...NOTHING_SELECTED, surfaceIds: extended })
}

function walkCorners({ view }: Session, room: Room, cornerId: string, by: number): void {
  const ids = room.corners.map((corner) => corner.id)
  const id = neighbour(ids, ids.indexOf(cornerId), by)
  if (id !== undefined) view.setState({ cornerId: id })
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

import { useState } from 'react'
import type { Frame } from '#drawing/frame.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import { standingOutlines } from '#ui/canvas/drawStart.ts'
import type { Gestures, Press } from '#ui/canvas/pointer.ts'
import { distance, drawingLines, finestStep, gridStep, ringPlaces, type Snapped, snapPoint } from '#ui/canvas/snap.ts'
import { useDocument } from '#ui/session.ts'
import { useDraw, useShell } from '#ui/shell.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** Where the next corner would stand. */
export interface DrawPointer extends Snapped {
  /** The press would close the outline on its first corner. */
  readonly closes: boolean
}

/** How near the first corner a press closes the outline, and a line holds the next corner, px. */
const CLOSE = { mouse: 13, touch: 26 }
const HOLD = 11

/** Draws an outline corner by corner. */
export function useDrawGestures(
  frame: Frame,
  units: LengthUnit,
  close: () => void,
): { readonly pointer: DrawPointer | null; readonly gestures: Gestures } {
  const { draw } = useShell()
  const points = useDraw((state) => state.points)
  const [seen, setSeen] = useState<{ readonly pointer: DrawPointer; readonly after: readonly Point[] } | null>(null)
  const target = useDraw((state) => state.target)
  const isAsked = useDraw((state) => state.closing !== null)
  const rooms = useDocument((state) => state.project.rooms)
  const others = standingOutlines(target, rooms)
  const pointerOf = (press: Press) => nextCorner(points, others, press, { frame, units })
  const nothing = () => undefined
  return {
    // Where the pointer stood before the last corner says nothing about the next one.
    pointer: seen?.after === points && !isAsked ? seen.pointer : null,
    gestures: {
      hover: (press) => setSeen(press && { pointer: pointerOf(press), after: points }),
      down: () => false,
      drag: nothing,
      drop: nothing,
      cancel: nothing,
      click: (press) => {
        const next = pointerOf(press)
        // While the page asks how to close, a press on the plan would answer something else.
        if (isAsked) return
        if (next.closes) close()
        else draw.add(next.point)
      },
    },
  }
}

interface Paper {
  readonly frame: Frame
  readonly units: LengthUnit
}

function nextCorner(
  points: readonly Point[],
  others: readonly Ring[],
  press: Press,
  { frame, units }: Paper,
): DrawPointer {
  const [first] = points
  const reach = (press.isTouch ? CLOSE.touch : CLOSE.mouse) / frame.scale
  if (first && points.length >= 3 && distance(first, press.at) <= reach) {
    return { point: first, guides: [], closes: true }
  }
  const snapped = snapPoint({
    at: press.at,
    lines: drawingLines(points, others),
    places: ringPlaces(others, points.at(-1) ?? null),
    tolerance: HOLD / frame.scale,
    step: gridStep(units),
    free: press.free,
    finest: finestStep(units),
  })
  return { ...snapped, closes: false }
}

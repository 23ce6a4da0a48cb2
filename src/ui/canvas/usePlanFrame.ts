import { type RefObject, useLayoutEffect, useMemo, useState } from 'react'
import { type Bounds, boundsOf, centreFrame, type Frame, toTarget } from '#drawing/frame.ts'
import type { Place } from '#drawing/model.ts'
import type { Point } from '#geometry/polygon.ts'

export interface Size {
  readonly width: number
  readonly height: number
}

export interface PlanFrame {
  readonly frame: Frame
  readonly size: Size
  pan(dx: number, dy: number): void
  /** Closer (> 1) or further away about a place on the screen, which comes to lie at `to` where that is given. */
  zoom(factor: number, about: Place, to?: Place): void
  /** Shows everything again, now and after every change. */
  fit(): void
  /** Shows these places, moving the view only if one is out of sight. */
  reveal(points: readonly Point[]): void
}

/** Pixels per millimetre: a 60 m hall in a narrow window, a joint at arm's length. */
const LEAST_SCALE = 0.004
const LARGEST_SCALE = 4

/** A plan less high than this shows its dimensions and no scale bar, px. */
export const ROOM_FOR_SCALE_BAR = 360

/** A plan less high than this has no room for dimensions, px. */
const STRIP = 160

/** Free space round the room for two rows of dimensions and the scale bar. */
function margins({ width, height }: Size) {
  // A strip left over by what is asked above it: without its dimensions, but not the size of a stamp.
  if (height < STRIP) return { left: 36, right: 36, top: 18, bottom: 22 }
  const side = Math.max(52, Math.min(92, width * 0.12))
  // Less than 62 above the room leaves the dimensions of its upper walls out: a text is whole or not there.
  if (height < ROOM_FOR_SCALE_BAR) return { left: side, right: side, top: height < 280 ? 40 : 62, bottom: 68 }
  return { left: side, right: side, top: Math.max(62, Math.min(92, height * 0.12)), bottom: 88 }
}

/**
 * Where the plan lies on the screen: fitted to the room until a hand moves the paper.
 * @param fitKey  changes when everything is to be shown again, wherever a hand has moved the paper to
 * @param isHeld  something is in the hand: the paper must not move under it, whatever is said below
 */
export function usePlanFrame(
  host: RefObject<HTMLElement | null>,
  points: readonly Point[],
  fitKey: string,
  isHeld: boolean,
): PlanFrame {
  const size = useSize(host)
  const steady = useSteadySize(size, isHeld)
  const [moved, setMoved] = useState<Moved | null>(null)
  return useMemo(() => {
    const rest = fitted(boundsOf(points), steady)
    const frameOf = (state: Moved | null): Frame => (state !== null && state.fitKey === fitKey ? state.frame : rest)
    const frame = frameOf(moved)
    // Several moves may come before the page is drawn again: each goes on from the one before.
    const change = (next: (before: Frame) => Frame) => setMoved((before) => ({ frame: next(frameOf(before)), fitKey }))
    return {
      frame,
      size,
      pan: (dx, dy) => change((before) => ({ ...before, x: before.x + dx, y: before.y + dy })),
      zoom: (factor, about, to = about) => change((before) => zoomed(before, factor, about, to)),
      fit: () => setMoved(null),
      reveal: (wanted) => {
        const isSeen = wanted.map((point) => toTarget(frame, point)).every((place) => isWithin(place, size))
        if (!isSeen) change(() => fitted(boundsOf(wanted), size))
      },
    }
  }, [moved, fitKey, points, size, steady])
}

/** Where a hand has moved the paper to, until everything is asked for again. */
interface Moved {
  readonly frame: Frame
  readonly fitKey: string
}

function useSize(host: RefObject<HTMLElement | null>): Size {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 })
  useLayoutEffect(() => {
    const element = host.current
    if (!element) return
    const measure = () => setSize({ width: element.clientWidth, height: element.clientHeight })
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [host])
  return size
}

/** Changes of the plan's size no larger than this leave the drawing where it lies, px. */
const STEADY_PX = 48

/** The size to fit to: a sentence below that grows by a line must not move the paper under the pointer. */
function useSteadySize(size: Size, isHeld: boolean): Size {
  const [steady, setSteady] = useState(size)
  if (isHeld && steady.width > 0) return steady
  const isFar = (a: number, b: number) => Math.abs(a - b) > STEADY_PX
  if (!isFar(size.width, steady.width) && !isFar(size.height, steady.height)) return steady
  setSteady(size)
  return size
}

function fitted(bounds: Bounds, size: Size): Frame {
  const { left, right, top, bottom } = margins(size)
  const box = {
    x: left,
    y: top,
    width: Math.max(40, size.width - left - right),
    height: Math.max(40, size.height - top - bottom),
  }
  const across = Math.max(bounds.maxX - bounds.minX, 1)
  const up = Math.max(bounds.maxY - bounds.minY, 1)
  return centreFrame(bounds, clampScale(Math.min(box.width / across, box.height / up)), box)
}

function zoomed(frame: Frame, factor: number, about: Place, to: Place): Frame {
  const scale = clampScale(frame.scale * factor)
  const ratio = scale / frame.scale
  return { scale, x: to[0] - (about[0] - frame.x) * ratio, y: to[1] - (about[1] - frame.y) * ratio }
}

function clampScale(scale: number): number {
  return Math.min(LARGEST_SCALE, Math.max(LEAST_SCALE, scale))
}

function isWithin([x, y]: Place, size: Size): boolean {
  return x >= 20 && y >= 20 && x <= size.width - 20 && y <= size.height - 20
}

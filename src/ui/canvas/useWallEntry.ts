import { useState } from 'react'
import { directionName, directionText, parseDirection, stepFrom } from '#ui/canvas/direction.ts'
import { firstCorner } from '#ui/canvas/drawStart.ts'
import { newProjectOf } from '#ui/canvas/drawStore.ts'
import { degrees } from '#ui/canvas/drawWords.ts'
import { readTypedWall, type TypedWall } from '#ui/canvas/typedWall.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { bothReadings } from '#ui/fields/readLength.ts'
import { useDocument } from '#ui/session.ts'
import { useDraw, useShell } from '#ui/shell.ts'
import type { LengthUnit } from '#units/quantity.ts'
import type { Result } from '#units/result.ts'

/** The unit a bare number has in what is being drawn. */
export function useDrawingUnits(): LengthUnit {
  const projectUnits = useDocument((state) => state.project.units)
  return useDraw((state) => newProjectOf(state)?.units) ?? projectUnits
}

type Problem = { readonly field: 'length' | 'direction'; readonly text: string }

/** What is typed of the next wall, how it is read, and the corner it adds. */
export function useWallEntry(view: PlanFrame) {
  const { draw } = useShell()
  const units = useDrawingUnits()
  const rooms = useDocument((state) => state.project.rooms)
  const points = useDraw((state) => state.points)
  const [length, setLength] = useState('')
  const [direction, setDirection] = useState('right')
  const [problem, setProblem] = useState<Problem | null>(null)
  const [before, last] = [points.at(-2), points.at(-1)]
  const lastDegrees = before && last ? degrees(before, last) : 0
  const wall = readTypedWall(length, units, lastDegrees)
  const turned = parseDirection(direction, lastDegrees)
  const typed = wall.ok && wall.value.degrees !== null ? wall.value.degrees : null
  const heading = typed ?? (turned.ok ? turned.value : null)
  return {
    length,
    direction,
    problem,
    lengthReading: wall.ok ? bothReadings(wall.value.lengthMm, units) : example(units),
    /** The direction the next wall takes, degrees; null while it cannot be read. */
    degrees: heading,
    directionReading: directionReading(typed, heading),
    setLength: (text: string) => {
      setLength(text)
      setProblem(null)
    },
    setDirection: (text: string) => {
      setDirection(text)
      setProblem(null)
    },
    /** True when a corner was added. */
    add: (): boolean => {
      const found = problemOf(wall, turned)
      setProblem(found)
      if (found || !wall.ok || heading === null) return false
      const { points: standing, target } = draw.store.getState()
      const from = standing.at(-1) ?? firstCorner(target, rooms)
      if (standing.length === 0) draw.add(from)
      draw.add(stepFrom(from, wall.value.lengthMm, heading))
      view.reveal(draw.store.getState().points)
      setLength('')
      if (typed !== null) setDirection(directionText(typed))
      return true
    },
  }
}

function problemOf(wall: Result<TypedWall, string>, turned: Result<number, string>): Problem | null {
  if (!wall.ok) return { field: 'length', text: wall.error }
  if (wall.value.degrees === null && !turned.ok) return { field: 'direction', text: turned.error }
  return null
}

function directionReading(typed: number | null, heading: number | null): string {
  if (typed !== null) return `${directionName(typed)}, as typed with the length`
  return heading === null ? 'right, up, 45, left turn, -30' : `${directionName(heading)} (or 45, left turn, -30)`
}

function example(units: LengthUnit): string {
  return units === 'mm' ? 'as 3810 right, 3.81 m u, 12\' 6" left' : `as 12' 6" right, 12-6.5 u, 3.81 m left`
}

import { area, line } from 'd3-shape'
import { type KeyboardEvent, type PointerEvent, useState } from 'react'
import { OCTAVES_HZ } from '#acoustics/bands.ts'
import { LevelNames } from '#ui/charts/LevelNames.tsx'
import { type DrawnLevels, type LevelScales, levelScales } from '#ui/charts/levelScale.ts'
import { octaveWords } from '#ui/charts/levelWords.ts'
import type { Decibels } from '#units/quantity.ts'

const LEFT = 46
const RIGHT = 10
const TOP = 10
const BOTTOM = 24

interface Props {
  readonly width: number
  readonly height: number
  /** Of whom the levels are. */
  readonly name: string
  readonly levels: DrawnLevels
}

/**
 * Level at a receiver by octave with its likely range against the limit, and the source above it. Every octave is read by
 * pointing at it, or by arrow keys.
 */
export function LevelChart({ width, height, name, levels }: Props) {
  const [read, setRead] = useState<number | null>(null)
  const scales = levelScales(levels, { width, height, left: LEFT, right: RIGHT, top: TOP, bottom: BOTTOM })
  const deciding = OCTAVES_HZ.indexOf(levels.worstBandHz ?? levels.dominantBandHz ?? 0)
  const shown = read ?? Math.max(0, deciding)
  const words = octaveWords(levels, shown)
  const point = (event: PointerEvent<HTMLElement>) => {
    const across = event.clientX - event.currentTarget.getBoundingClientRect().left
    setRead(nearestOctave(scales, across))
  }
  // A finger leaves the glass whenever it is lifted: what it pointed at stays read.
  const leave = (event: PointerEvent) => {
    if (event.pointerType === 'mouse') setRead(null)
  }
  const press = (event: KeyboardEvent) => {
    const next = octaveAfter(shown, event.key)
    if (next === null) return
    setRead(next)
    event.preventDefault()
    event.stopPropagation()
  }
  return (
    <div className="level-place">
      <div
        className="level-reader"
        role="slider"
        tabIndex={0}
        aria-label={`Level at ${name}, octave read`}
        aria-valuemin={0}
        aria-valuemax={OCTAVES_HZ.length - 1}
        aria-valuenow={shown}
        aria-valuetext={words}
        onPointerMove={point}
        onPointerDown={point}
        onPointerLeave={leave}
        onKeyDown={press}
      >
        <svg
          className="level-chart"
          width={width}
          height={height}
          viewBox={`0 0 ${width} ${height}`}
          aria-hidden="true"
        >
          <LevelAxes scales={scales} width={width} height={height} />
          {deciding >= 0 && <Deciding scales={scales} octave={deciding} height={height} />}
          <Curves levels={levels} scales={scales} />
          <line className="level-cursor" x1={scales.x(shown)} x2={scales.x(shown)} y1={TOP} y2={height - BOTTOM} />
          <LevelNames levels={levels} scales={scales} width={width} />
        </svg>
      </div>
      <p className="level-read">{words}.</p>
    </div>
  )
}

/** The octave under a place, px from the chart's left edge. */
export function nearestOctave({ x }: Pick<LevelScales, 'x'>, across: number): number {
  return Math.max(0, Math.min(OCTAVES_HZ.length - 1, Math.round(x.invert(across))))
}

/** The octave an arrow key leads to; null: the key means nothing here. */
export function octaveAfter(octave: number, key: string): number | null {
  const last = OCTAVES_HZ.length - 1
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return Math.min(last, octave + 1)
    case 'ArrowLeft':
    case 'ArrowDown':
      return Math.max(0, octave - 1)
    case 'Home':
      return 0
    case 'End':
      return last
    default:
      return null
  }
}

function LevelAxes({ scales, width, height }: { scales: LevelScales; width: number; height: number }) {
  const { x, y } = scales
  const ticks = y.ticks(5)
  return (
    <g>
      {ticks.map((level, index) => (
        <g key={level}>
          <line className="chart-grid" x1={LEFT} x2={width - RIGHT} y1={y(level)} y2={y(level)} />
          <text className="chart-tick" x={LEFT - 6} y={y(level) + 4.5} textAnchor="end">
            {level < 0 ? `−${-level}` : level}
            {index === ticks.length - 1 && ' dB'}
          </text>
        </g>
      ))}
      {OCTAVES_HZ.map((hz, octave) => (
        <text key={hz} className="chart-tick" x={x(octave)} y={height - 6} textAnchor="middle">
          {hz < 1000 ? hz : `${hz / 1000}k`}
        </text>
      ))}
    </g>
  )
}

/** The octave that decides stands between two lines, so that it is seen in grey print too. */
function Deciding({ scales, octave, height }: { scales: LevelScales; octave: number; height: number }) {
  const { x, half } = scales
  return (
    <rect
      className="level-deciding"
      x={x(octave) - half * 0.9}
      y={TOP}
      width={half * 1.8}
      height={height - TOP - BOTTOM}
    />
  )
}

type Point = readonly [octave: number, level: Decibels]

function Curves({ levels, scales }: { readonly levels: DrawnLevels; readonly scales: LevelScales }) {
  const { x, y } = scales
  const run = line<Decibels | null>()
    .defined((level) => level !== null)
    .x((_, octave) => x(octave))
    .y((level) => y(level ?? 0))
  const range = area<readonly [Decibels | null, Decibels | null]>()
    .defined(([low, high]) => low !== null && high !== null)
    .x((_, octave) => x(octave))
    .y0(([low]) => y(low ?? 0))
    .y1(([, high]) => y(high ?? 0))
  const ends = levels.levelsLow95Db.map((low, octave) => [low, levels.levelsHigh95Db[octave] ?? null] as const)
  return (
    <g>
      <path className="level-range" d={range(ends) ?? ''} />
      <path className="level-source" d={run([...levels.sourceDb]) ?? ''} />
      {levels.limitDb && <path className="level-limit" d={run([...levels.limitDb]) ?? ''} />}
      <path className="level-shown" d={run([...levels.levelsDb]) ?? ''} />
      {known(levels.levelsDb).map(([octave, level]) => (
        <circle key={octave} className="level-dot" cx={x(octave)} cy={y(level)} r={3.5} />
      ))}
    </g>
  )
}

function known(levels: readonly (Decibels | null)[]): readonly Point[] {
  return levels.flatMap((level, octave): Point[] => (level === null ? [] : [[octave, level]]))
}

import { line } from 'd3-shape'
import { type KeyboardEvent, useRef } from 'react'
import { textWidth } from '#drawing/text.ts'
import { labelBox, overlaps, type PlacedLabel } from '#ui/charts/placeLabels.ts'
import { EMPTY_CORNER, LABEL_SIZE, MARK_RADIUS, type RulerLayout, type RulerMark } from '#ui/charts/rulerLayout.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface Props {
  readonly marks: readonly RulerMark[]
  readonly layout: RulerLayout
  readonly width: number
  readonly height: number
  readonly unit: LengthUnit
  /** What quiet is measured in, beside the axis. */
  readonly measure: string
  readonly label: string
  /** What stands in the scheme; null: the selected surfaces differ. */
  readonly chosen: string | null
  readonly pointed: string | null
  readonly onPoint: (id: string) => void
  readonly onLeave: () => void
  readonly onChoose: (id: string) => void
}

/** Words of the axes and labels: every mark says the same in full when it is reached. */
const UNREAD = { 'aria-hidden': true } as const

/**
 * Depth taken from the room against quiet gained: every assembly allowed here is a mark. Pointing at one or walking
 * to it by arrow key shows it everywhere, pressing it builds it.
 */
export function DepthRuler(props: Props) {
  const { layout, width, height, label, marks, onLeave } = props
  const group = useRef<SVGGElement>(null)
  const focusMark = (id: string) => group.current?.querySelector<SVGElement>(`[data-mark="${id}"]`)?.focus()
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: the radio group inside carries the name
    <svg className="depth-ruler" width={width} height={height} viewBox={`0 0 ${width} ${height}`}>
      <Axes {...props} />
      <Target {...props} />
      <Frontier marks={marks} layout={layout} />
      {layout.emptyCorner && (
        <text className="chart-aside" x={layout.emptyCorner.x} y={layout.emptyCorner.y}>
          {EMPTY_CORNER}
        </text>
      )}
      <g ref={group} role="radiogroup" aria-label={label} onPointerLeave={onLeave}>
        {marks.map((mark) => (
          <Mark key={mark.id} mark={mark} ruler={props} focusMark={focusMark} />
        ))}
      </g>
      <Labels {...props} />
    </svg>
  )
}

/** px: the longest word that stands beside the axis, "margin", is not cut off on a phone. */
const MEASURE_WIDTH = 43

function Axes({ layout, unit, measure }: Props) {
  const { x, y, plot } = layout
  return (
    <g {...UNREAD}>
      {layout.quietTicks.map((tick) => (
        <g key={tick}>
          <line className="chart-grid" x1={plot.left} x2={plot.right} y1={y(tick)} y2={y(tick)} />
          <text className="chart-tick" x={plot.left - 8} y={y(tick) + 4.5} textAnchor="end">
            {tick < 0 ? `−${-tick}` : tick}
          </text>
        </g>
      ))}
      {measure.split(/ at | in /).map((words, line) => (
        <text
          key={words}
          className="chart-tick chart-soft"
          x={Math.max(plot.left - 34, MEASURE_WIDTH)}
          y={plot.top + 4 + 16 * line}
          textAnchor="end"
        >
          {words}
        </text>
      ))}
      <line className="chart-axis" x1={plot.left} x2={plot.right} y1={plot.bottom} y2={plot.bottom} />
      {layout.depthTicks.map((tick, index) => (
        <g key={tick}>
          <line className="chart-axis" x1={x(tick)} x2={x(tick)} y1={plot.bottom} y2={plot.bottom + 5} />
          <text className="chart-tick" x={x(tick)} y={plot.bottom + 19} textAnchor="middle">
            {tick === 0 ? '0' : tickText(tick, unit)}
          </text>
          {unit === 'mm' && index === layout.depthTicks.length - 1 && (
            <text className="chart-tick" x={unitPlace(x(tick), tickText(tick, unit))} y={plot.bottom + 19}>
              mm
            </text>
          )}
        </g>
      ))}
    </g>
  )
}

/** The line to be reached; its name stands with the labels. */
function Target({ layout }: Props) {
  const { target, plot } = layout
  if (!target) return null
  return (
    <g {...UNREAD}>
      <line className="ruler-goal" x1={plot.left} x2={plot.right} y1={target.y} y2={target.y} />
    </g>
  )
}

/** After the last number of the axis. */
function unitPlace(x: number, number: string): number {
  return x + textWidth(number, LABEL_SIZE, 400) / 2 + 4
}

/** Inches stay inches past a foot: depths are compared, not built. */
function tickText(depth: number, unit: LengthUnit): string {
  return unit === 'mm' ? formatLength(depth, 'mm').replace(' mm', '') : `${Math.round(depth / 25.4)}"`
}

function Frontier({ marks, layout }: Pick<Props, 'marks' | 'layout'>) {
  const byId = new Map(marks.map((mark) => [mark.id, mark]))
  const places = layout.frontierIds.flatMap((id): [number, number][] => {
    const mark = byId.get(id)
    return mark ? [[layout.x(mark.depthMm), layout.y(mark.value)]] : []
  })
  return <path className="chart-frontier" d={line()(places) ?? ''} {...UNREAD} />
}

interface MarkProps {
  readonly mark: RulerMark
  readonly ruler: Props
  readonly focusMark: (id: string) => void
}

function Mark({ mark, ruler, focusMark }: MarkProps) {
  const { layout, chosen, pointed, onPoint, onLeave, onChoose, marks } = ruler
  const x = layout.x(mark.depthMm)
  const y = layout.y(mark.value)
  const isChosen = mark.id === chosen
  const entry = chosen !== null && marks.some(({ id }) => id === chosen) ? chosen : marks[0]?.id
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Enter' || event.key === ' ') onChoose(mark.id)
    else if (event.key === 'Escape' && pointed !== null) onLeave()
    else {
      const next = neighbour(marks, mark.id, event.key)
      if (next === null) return
      focusMark(next)
    }
    // The page's own keys (Escape lets the selection go) must not answer as well.
    event.preventDefault()
    event.stopPropagation()
  }
  const state = [isChosen && 'is-chosen', mark.id === pointed && 'is-pointed', mark.doubt !== null && 'is-doubtful']
  return (
    // biome-ignore lint/a11y/useSemanticElements: an input cannot stand inside a drawing
    <g
      role="radio"
      data-mark={mark.id}
      aria-checked={isChosen}
      aria-label={mark.sentence}
      aria-description={mark.doubt ?? undefined}
      tabIndex={mark.id === entry ? 0 : -1}
      className={['ruler-mark', ...state.filter(Boolean)].join(' ')}
      onPointerEnter={() => onPoint(mark.id)}
      onFocus={() => onPoint(mark.id)}
      onBlur={onLeave}
      onClick={() => onChoose(mark.id)}
      onKeyDown={press}
    >
      <rect x={x - 12} y={y - 12} width={24} height={24} className="ruler-target" />
      <line className="ruler-whisker" x1={x} x2={x} y1={layout.y(mark.high)} y2={layout.y(mark.low)} />
      {isChosen && <circle className="ruler-ring" cx={x} cy={y} r={MARK_RADIUS + 5} />}
      {mark.doubt !== null ? (
        <path className="ruler-dot" d={`M${x} ${y - 6}L${x + 6} ${y}L${x} ${y + 6}L${x - 6} ${y}Z`} />
      ) : (
        <circle className="ruler-dot" cx={x} cy={y} r={MARK_RADIUS} />
      )}
    </g>
  )
}

/** The mark an arrow key leads to, by depth; null: the key means nothing here. */
export function neighbour(marks: readonly RulerMark[], id: string, key: string): string | null {
  const order = [...marks].sort((a, b) => a.depthMm - b.depthMm || a.value - b.value)
  const at = order.findIndex((mark) => mark.id === id)
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return order[(at + 1) % order.length]?.id ?? null
    case 'ArrowLeft':
    case 'ArrowDown':
      return order[(at - 1 + order.length) % order.length]?.id ?? null
    case 'Home':
      return order[0]?.id ?? null
    case 'End':
      return order.at(-1)?.id ?? null
    default:
      return null
  }
}

function Labels({ layout, chosen, pointed, marks, width }: Props) {
  const nameless = marks.find(({ id }) => id === pointed && !layout.labels.some((label) => label.id === id))
  const own = nameless && nameOver(nameless, layout, width)
  const shown = own ? layout.labels.filter((label) => !overlaps(boxOf(label), boxOf(own))) : layout.labels
  return (
    <g {...UNREAD} className="ruler-labels">
      {layout.target && (
        <text
          className="chart-aside"
          x={layout.target.name.x}
          y={layout.target.name.y}
          textAnchor={layout.target.name.anchor}
        >
          {layout.target.name.text}
        </text>
      )}
      {[...shown, ...(own ? [own] : [])].map((label) => (
        <text
          key={label.id}
          x={label.x}
          y={label.y}
          textAnchor={label.anchor}
          className={label.id === pointed ? 'is-pointed' : label.id === chosen ? 'is-chosen' : undefined}
        >
          {label.text}
        </text>
      ))}
    </g>
  )
}

function boxOf(label: PlacedLabel) {
  return labelBox(label, LABEL_SIZE)
}

/** A name that found no place of its own comes up over its mark while it is pointed at; others make room. */
function nameOver(mark: RulerMark, layout: RulerLayout, width: number): PlacedLabel {
  const x = layout.x(mark.depthMm)
  const anchor = x > width - 120 ? 'end' : 'middle'
  return { id: mark.id, text: mark.label, x, y: layout.y(mark.value) - 12, anchor }
}

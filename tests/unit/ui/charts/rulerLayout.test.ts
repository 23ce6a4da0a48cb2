import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { DepthRuler, neighbour } from '#ui/charts/DepthRuler.tsx'
import { EMPTY_CORNER, type RulerMark, rulerLayout } from '#ui/charts/rulerLayout.ts'

function mark(id: string, depthMm: number, value: number): RulerMark {
  const sentence = `${id}, STC ${value}, likely ${value - 5}-${value + 5}`
  return { id, label: id, sentence, depthMm, value, low: value - 5, high: value + 5, doubt: null }
}

const MARKS = [mark('as-is', 0, 35), mark('clips', 73.025, 57), mark('channel', 60.325, 45), mark('studs', 146.05, 62)]
const SIZE = { width: 900, height: 166, existingMm: 112 }

describe('the depth ruler', () => {
  const layout = rulerLayout(MARKS, SIZE, 'ft-in', 'clips')

  test('counts depth from zero, with what stands there to the left of it', () => {
    expect(layout.x(0)).toBeGreaterThan(300)
    expect(layout.x(25.4) - layout.x(0)).toBeCloseTo(layout.x(50.8) - layout.x(25.4), 9)
    expect(layout.depthTicks[0]).toBe(0)
    expect(layout.depthTicks[1]).toBeCloseTo(25.4, 9)
  })

  test('ticks in whole inches or 25 mm', () => {
    const metric = rulerLayout(MARKS, SIZE, 'mm', null)
    expect(metric.depthTicks[1]! % 25).toBe(0)
  })

  test('draws the frontier through what nothing beats', () => {
    expect(layout.frontierIds).toEqual(['as-is', 'channel', 'clips', 'studs'])
    const beaten = rulerLayout([...MARKS, mark('poor', 100, 50)], SIZE, 'ft-in', 'clips')
    expect(beaten.frontierIds).not.toContain('poor')
  })

  test('names the present one first', () => {
    expect(layout.labels.map(({ id }) => id)).toContain('clips')
  })

  test('says why the upper left corner is empty, unless something is there', () => {
    expect(layout.emptyCorner).not.toBeNull()
    const full = rulerLayout([...MARKS, mark('wonder', 6, 90)], SIZE, 'ft-in', null)
    expect(full.emptyCorner === null || full.y(90) > full.emptyCorner.y).toBe(true)
  })

  test('is a group of radios with the whole of each mark in its name', () => {
    const nothing = () => undefined
    const html = renderToStaticMarkup(
      createElement(DepthRuler, {
        marks: MARKS,
        layout,
        width: 900,
        height: 166,
        unit: 'ft-in',
        measure: 'STC',
        label: 'Assembly for Wall 3',
        chosen: 'clips',
        pointed: null,
        onPoint: nothing,
        onLeave: nothing,
        onChoose: nothing,
      }),
    )
    expect(html.match(/role="radio"/g)).toHaveLength(MARKS.length)
    expect(html.match(/aria-checked="true"/g)).toHaveLength(1)
    expect(html.match(/tabindex="0"/g)).toHaveLength(1)
    expect(html).toContain('aria-label="clips, STC 57, likely 52-62"')
    expect(html).toContain(EMPTY_CORNER)
  })

  test('draws a target as a line that is always in sight, and keeps its name off marks', () => {
    const poor = MARKS.map((one) => ({ ...one, value: one.value - 80, low: one.low - 80, high: one.high - 80 }))
    const withTarget = rulerLayout(poor, { ...SIZE, target: { value: 0, text: '0 dB: the limit' } }, 'mm', 'clips')
    const { target, plot } = withTarget
    expect(target!.y).toBeCloseTo(withTarget.y(0), 9)
    expect(target!.y).toBeGreaterThan(plot.top)
    expect(withTarget.y(-50)).toBeLessThanOrEqual(plot.bottom)
    for (const { depthMm, value } of poor) {
      const isBeside = Math.abs(withTarget.x(depthMm) - target!.name.x) > 60
      expect(isBeside || Math.abs(withTarget.y(value) - target!.name.y) > 6).toBe(true)
    }
    expect(layout.target).toBeNull()
  })

  test('is walked by depth, round both ends', () => {
    expect(neighbour(MARKS, 'as-is', 'ArrowRight')).toBe('channel')
    expect(neighbour(MARKS, 'channel', 'ArrowUp')).toBe('clips')
    expect(neighbour(MARKS, 'as-is', 'ArrowLeft')).toBe('studs')
    expect(neighbour(MARKS, 'studs', 'Home')).toBe('as-is')
    expect(neighbour(MARKS, 'studs', 'x')).toBeNull()
  })
})

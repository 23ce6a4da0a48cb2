import { describe, expect, it } from 'vitest'
import type { SurfaceResult } from '#analysis/results.ts'
import { marksBox } from '#drawing/bounds.ts'
import type { Mark } from '#drawing/model.ts'
import { sectionMarks } from '#drawing/section.ts'
import { SCREEN_STYLE } from '#drawing/style.ts'
import { aGarage, aPlanResult } from '../../support/drawing.ts'

const SCALE = 64 / 25.4
const garage = aGarage()

function section(assembly: string): Mark[] {
  const wall = aPlanResult(garage, [assembly]).surfaces[0] as SurfaceResult
  return sectionMarks({
    layers: wall.layers,
    depthMm: wall.netDepthMm,
    zeroX: 400,
    scale: SCALE,
    top: 30,
    height: 44,
    style: SCREEN_STYLE,
    units: 'ft-in',
    words: { far: 'outside', zero: 'stud face', room: 'room' },
  })
}

function words(marks: readonly Mark[]): string[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
}

describe('the section of a build-up', () => {
  it('dimensions gap, studs and boards, and all of them together, from the zero line', () => {
    expect(words(section('W14'))).toEqual(['outside', 'room', 'stud face', '1"', '3 1/2"', '5/8"', '5/8"', '5 3/4"'])
    expect(words(section('W07'))).toEqual(['outside', 'room', 'stud face', '1 5/8"', '5/8"', '5/8"', '2 7/8"'])
  })

  it('ends at the room face on the same inches as the ruler', () => {
    const boards = section('W14').filter((mark) => mark.role === 'section' && mark.kind === 'polygon')
    const box = marksBox(boards)!
    expect(box.x + box.width).toBeCloseTo(400 + 5.75 * 64, 6)
  })

  it('draws loops in the wool of both frames', () => {
    const hatch = section('W14').find(({ role }) => role === 'hatch')
    const loops = hatch?.kind === 'lines' ? hatch.runs.filter((run) => run.length > 40) : []
    expect(loops).toHaveLength(2)
  })

  it('shows what stands there where nothing is built', () => {
    expect(section('as-is').length).toBeGreaterThan(3)
  })
})

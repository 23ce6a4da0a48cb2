import { describe, expect, it } from 'vitest'
import { lossCurve } from '#acoustics/layered/lossCurve.ts'
import type { MethodOptions } from '#acoustics/layered/method.ts'
import type { LayeredSystem } from '#acoustics/layered/system.ts'
import { cavityOf, leafOf, tabledSystem } from '../../support/acoustics.ts'
import table from './method-curves.json' with { type: 'json' }

/** The method before its two improvements, as the other implementation has it. */
const EARLIER: MethodOptions = { studsBend: false, platesYield: false, gaussNodes: 8, directions: 'far-to-room' }

const STUDS = { kind: 'wood-stud', spacingMm: 400 } as const
const [THIN, THICK] = [leafOf('gypsum-regular', 12.7), leafOf('gypsum-type-x', 15.9, 2)]

/** Build-ups the file describes in words. */
const TOLD: Readonly<Record<string, LayeredSystem>> = {
  X1: { leaves: [THIN, THIN], cavities: [cavityOf(89, 0, STUDS)] },
  X2: {
    leaves: [THIN, THIN, THICK],
    cavities: [cavityOf(89, 0, STUDS), { ...cavityOf(114, 89), fillAgainst: 'room' }],
  },
  X3: { leaves: [THIN, THICK], cavities: [cavityOf(203, 178)] },
  X4: {
    leaves: [THICK, THICK],
    cavities: [cavityOf(130, 89, { kind: 'sound-clip', frame: 'wood-stud', rowSpacingMm: 610, clipSpacingMm: 1220 })],
  },
  X5: { leaves: [leafOf('gypsum-type-x', 15.9)], cavities: [] },
  X6: { leaves: [THICK], cavities: [] },
  X7: { leaves: [leafOf('glass', 6)], cavities: [] },
  X8: { leaves: [leafOf('concrete', 150)], cavities: [] },
  X9: { leaves: [leafOf('concrete-block-hollow', 190)], cavities: [] },
}

type Row = (typeof table.systems)[number]

function systemOf(row: Row): LayeredSystem {
  const told = TOLD[row.id]
  if (told) return told
  const { leaf1, leaf2, framing, connection, depthMm, absorberMm, studSpacingMm, channelSpacingMm } = row
  if (leaf1 === undefined || leaf2 === undefined || framing === undefined || connection === undefined) {
    throw new Error(`no build-up for ${row.id}`)
  }
  const wall = { leaf1, leaf2, framing, connection, depthMm: depthMm ?? 0, absorberMm: absorberMm ?? 0 }
  return tabledSystem(wall, studSpacingMm ?? 0, channelSpacingMm ?? 0)
}

describe('an independent implementation of the same method (not evidence)', () => {
  // 0.6 dB: its plain angles are off by up to 0.45 dB at coincidence, where ours are crowded; elsewhere 0.1 is usual.
  it.each(table.systems)('$id agrees in every band below 80 dB', (row) => {
    const ours = lossCurve(systemOf(row), row.areaM2, 'plot', EARLIER)
    const apart = row.lossDb.map((theirs, band) => (theirs < 80 ? Math.abs(ours[band]! - theirs) : 0))
    expect(Math.max(...apart)).toBeLessThanOrEqual(0.6)
  })

  it('agrees within 0.5 dB on at least 37 of the 39 systems', () => {
    const close = table.systems.filter((row) => {
      const ours = lossCurve(systemOf(row), row.areaM2, 'plot', EARLIER)
      return row.lossDb.every((theirs, band) => theirs >= 80 || Math.abs(ours[band]! - theirs) <= 0.5)
    })
    expect(close.length).toBeGreaterThanOrEqual(37)
  })
})

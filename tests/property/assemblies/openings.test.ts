import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lossWithLeak } from '#assemblies/openingSeals.ts'
import { OPENING_TYPES } from '#assemblies/openingTypes.ts'
import { inOpening, made, soundOf } from '../../support/openings.ts'

const doors = fc.constantFrom(...OPENING_TYPES.filter(({ kinds, seals }) => kinds.includes('door') && seals !== 'none'))
const sizes = fc.record({
  widthMm: fc.integer({ min: 300, max: 3000 }),
  heightMm: fc.integer({ min: 1000, max: 3000 }),
})

/** What goes through with the seals, dB over the bands. */
function whole(type: string, seal: 'good' | 'worn' | 'undercut', size: { widthMm: number; heightMm: number }) {
  const context = inOpening('door', size)
  const sound = soundOf(made(type, seal), context)
  return sound.seal ? lossWithLeak(sound.lossDb, sound.seal, context.areaM2) : sound.lossDb
}

describe('doors of any size', () => {
  it('lose with worn seals, and more with a leaf cut off', () => {
    fc.assert(
      fc.property(doors, sizes, ({ id }, size) => {
        const [good, worn, undercut] = (['good', 'worn', 'undercut'] as const).map((seal) => whole(id, seal, size))
        good!.forEach((loss, band) => {
          // A leaf that stops less than its own gap does is not made worse by the gap.
          expect(worn![band]!).toBeLessThanOrEqual(Math.max(loss, 12) + 1e-9)
          expect(undercut![band]!).toBeLessThanOrEqual(Math.max(worn![band]!, 12) + 1e-9)
          expect(Math.min(worn![band]!, undercut![band]!)).toBeGreaterThanOrEqual(0)
        })
      }),
      { numRuns: 60 },
    )
  })

  it('never do worse as a pair than as one of its leaves', () => {
    const leaves = doors.filter(({ loss }) => loss.kind !== 'pair')
    fc.assert(
      fc.property(leaves, leaves, fc.integer({ min: 40, max: 1500 }), (first, second, pairGapMm) => {
        const pair = made(first.id, 'good', { second: { type: second.id, seal: 'good' } })
        const two = soundOf(pair, inOpening('door', { pairGapMm }))
        const one = soundOf(made(first.id), inOpening('door'))
        two.lossDb.forEach((loss, band) => {
          expect(loss).toBeGreaterThanOrEqual(one.lossDb[band]! - 1e-9)
        })
      }),
      { numRuns: 60 },
    )
  })
})

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { frontier } from '#ui/charts/frontier.ts'

const trade = fc.record({
  depth: fc.integer({ min: -20, max: 300 }),
  quiet: fc.option(fc.integer({ min: 20, max: 80 }), { nil: null }),
})

test('nothing on the frontier is beaten, and everything off it is', () => {
  fc.assert(
    fc.property(fc.array(trade, { maxLength: 30 }), (entries) => {
      const best = frontier(entries)
      for (const entry of entries) {
        const { quiet } = entry
        if (quiet === null) continue
        const isMatched = best.some((other) => other.depth <= entry.depth && other.quiet >= quiet)
        expect(isMatched).toBe(true)
      }
      for (let i = 1; i < best.length; i += 1) {
        expect(best[i]!.depth).toBeGreaterThan(best[i - 1]!.depth)
        expect(best[i]!.quiet).toBeGreaterThan(best[i - 1]!.quiet)
      }
    }),
  )
})

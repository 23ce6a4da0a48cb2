import { setup } from '../support/buildPage.ts'
import { benchCatalogue } from './catalogue.bench.ts'
import { benchCurve } from './curve.bench.ts'
import { benchDrag } from './drag.bench.ts'
import { benchInset } from './inset.bench.ts'
import { type BenchRow, benchScheme } from './scheme.bench.ts'
import { benchSteps } from './steps.bench.ts'

/** `npm run bench`: medians beside their goals; figures of this machine, never a test. */
setup()
const rows: readonly BenchRow[] = [
  ...benchInset(),
  ...benchScheme(),
  ...benchCurve(),
  ...benchCatalogue(),
  ...benchSteps(),
  ...(await benchDrag()),
]
for (const { name, medianMs, goalMs, note } of rows) {
  const goal = goalMs === null ? '' : `   goal ${goalMs} ms ${medianMs <= goalMs ? 'met' : 'missed'}`
  console.log(`${name.padEnd(58)} ${medianMs.toFixed(3).padStart(10)} ms${goal}${note ? `   ${note}` : ''}`)
}

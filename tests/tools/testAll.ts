import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** What `npm test` runs: types, lint, both builds, then every test file; ends with a plain line of counts. */

interface Step {
  readonly name: string
  readonly argv: readonly string[]
  /** A test runner that writes its counts as JSON. */
  readonly counts?: boolean
}

const STEPS: readonly Step[] = [
  { name: 'types', argv: ['tsc', '-p', 'tsconfig.json'] },
  { name: 'types of the core', argv: ['tsc', '-p', 'tsconfig.core.json'] },
  { name: 'lint and format', argv: ['biome', 'check', '.'] },
  { name: 'build the command line', argv: ['vite', 'build', '--config', 'vite.cli.config.ts', '--logLevel', 'warn'] },
  { name: 'build the page', argv: ['vite', 'build', '--logLevel', 'warn'] },
  { name: 'unit, property, reference, golden and contract tests', argv: ['vitest', 'run'], counts: true },
  {
    name: 'browser tests',
    argv: ['vitest', 'run', '--config', 'vitest.browser.config.ts'],
    counts: true,
  },
]

interface Counts {
  passed: number
  failed: number
}

function runStep(step: Step, folder: string, counts: Counts): void {
  const started = performance.now()
  const report = join(folder, `${step.name.replaceAll(' ', '-')}.json`)
  const extra = step.counts ? ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`] : []
  const child = spawnSync('npx', ['--no-install', ...step.argv, ...extra], { stdio: 'inherit' })
  const seconds = ((performance.now() - started) / 1000).toFixed(1)
  console.log(`${child.status === 0 ? 'ok' : 'FAILED'}: ${step.name} (${seconds} s)`)
  if (step.counts) addCounts(report, child.status === 0, counts)
  else if (child.status !== 0) counts.failed += 1
}

function addCounts(report: string, succeeded: boolean, counts: Counts): void {
  try {
    const { numPassedTests, numFailedTests, numFailedTestSuites } = JSON.parse(readFileSync(report, 'utf8'))
    counts.passed += numPassedTests
    counts.failed += numFailedTests
    if (!succeeded && numFailedTests === 0) counts.failed += Math.max(1, numFailedTestSuites)
  } catch {
    counts.failed += 1
  }
}

const folder = mkdtempSync(join(tmpdir(), 'leafgap-test-'))
const counts: Counts = { passed: 0, failed: 0 }
for (const step of STEPS) runStep(step, folder, counts)
rmSync(folder, { recursive: true, force: true })
console.log(`${counts.passed} passed, ${counts.failed} failed`)
process.exitCode = counts.failed === 0 && counts.passed > 0 ? 0 : 1

import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))

export interface Spoken {
  readonly code: number | null
  readonly stdout: string
  readonly stderr: string
  /** Standard error, line by line. */
  readonly problems: readonly string[]
}

/** Runs the built command line from the project's folder. */
export function leafgap(args: readonly string[], input = ''): Spoken {
  return spoken(process.execPath, ['build/cli/leafgap.js', ...args], input)
}

/** Runs it the way README.md says. */
export function npxLeafgap(args: readonly string[], input = ''): Spoken {
  return spoken('npx', ['leafgap', ...args], input)
}

function spoken(command: string, args: readonly string[], input: string): Spoken {
  const child = spawnSync(command, args, { cwd: ROOT, input, encoding: 'utf8', maxBuffer: 1 << 27 })
  const problems = child.stderr.split('\n').filter((line) => line !== '')
  return { code: child.status, stdout: child.stdout, stderr: child.stderr, problems }
}

import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { APP_FOLDER } from './pageServer.ts'

const ROOT = new URL('../../', import.meta.url).pathname
/** What the built page is made from. */
const MADE_FROM = ['src', 'samples', 'index.html', 'vite.config.ts', 'package-lock.json']

/** Builds the page before the browser tests, unless the built one is newer than everything it is made from. */
export function setup(): void {
  const built = join(APP_FOLDER, 'index.html')
  const newest = Math.max(...MADE_FROM.map((path) => newestIn(join(ROOT, path))))
  if (existsSync(built) && statSync(built).mtimeMs >= newest) return
  const child = spawnSync('npx', ['--no-install', 'vite', 'build', '--logLevel', 'warn'], {
    cwd: ROOT,
    // The test runner's own NODE_ENV would build React's development edition.
    env: { ...process.env, NODE_ENV: 'production' },
    stdio: 'inherit',
    shell: process.platform === 'win32',
  })
  if (child.status !== 0) throw new Error('the page could not be built')
}

function newestIn(path: string): number {
  if (!existsSync(path)) return 0
  const found = statSync(path)
  if (!found.isDirectory()) return found.mtimeMs
  return Math.max(0, ...readdirSync(path).map((name) => newestIn(join(path, name))))
}

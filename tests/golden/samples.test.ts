import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { leafgap } from '../support/commandLine.ts'

const folder = mkdtempSync(join(tmpdir(), 'leafgap-golden-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Numbers to six significant decimals: enough to see any change, too few to see a machine's last bit. */
function rounded(text: string): string {
  const value = JSON.parse(text, (_, part) => (typeof part === 'number' ? Math.round(part * 1e4) / 1e4 : part))
  return `${JSON.stringify(value, null, 1)}\n`
}

/** Compares with samples/NAME/expected/FILE; REGEN=1 rewrites it, otherwise the new text lands beside it. */
function expectGolden(name: string, file: string, text: string): void {
  const path = fileURLToPath(new URL(`../../samples/${name}/expected/${file}`, import.meta.url))
  if (process.env['REGEN'] === '1') writeFileSync(path, text)
  const kept = readFileSync(path, 'utf8')
  if (kept !== text) writeFileSync(`${path}.changed`, text)
  expect(text === kept, `${file} of ${name} changed: see ${file}.changed beside it`).toBe(true)
}

describe.each(['garage', 'basement', 'outbuilding'])('sample %s', (name) => {
  const out = join(folder, name)
  const spoken = leafgap(['report', `samples/${name}/project.json`, '--out', out])

  it('is reported without a word of complaint', () => {
    expect(spoken).toMatchObject({ code: 0, stderr: '' })
  })

  it('gives the report, the ledger and the sheet it gave before', () => {
    expectGolden(name, 'report.json', rounded(readFileSync(join(out, 'report.json'), 'utf8')))
    const csv = readFileSync(join(out, 'ledger.csv'), 'utf8')
    expectGolden(
      name,
      'ledger.csv',
      csv.replace(/-?\d+\.\d+/g, (number) => String(Math.round(Number(number) * 1e4) / 1e4)),
    )
    expectGolden(
      name,
      'plan.svg',
      readFileSync(join(out, 'plan.svg'), 'utf8').replace(/base64,[A-Za-z0-9+/=]+/g, 'base64,'),
    )
  })
})

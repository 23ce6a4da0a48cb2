import { existsSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { textOf } from '../support/samples.ts'

const folder = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url))

describe('the papers', () => {
  it('map every folder of src', () => {
    const map = textOf('DEVELOPERS.md')
    for (const entry of readdirSync(folder('src'), { withFileTypes: true })) {
      if (entry.isDirectory()) expect(map, `src/${entry.name}`).toContain(`\`src/${entry.name}\``)
    }
  })

  it('name only npm scripts that exist', () => {
    const scripts = Object.keys(JSON.parse(textOf('package.json')).scripts)
    const named = [...`${textOf('README.md')}${textOf('DEVELOPERS.md')}`.matchAll(/npm run ([a-z:-]+)/g)]
    expect(named.length).toBeGreaterThan(0)
    for (const [, script = ''] of named) expect(scripts).toContain(script)
  })

  it('point at files that are there', () => {
    const named = [...textOf('README.md').matchAll(/\]\(([^)]+)\)|`(samples\/[^` ]+|src\/[^` ]+\.txt)`/g)]
    for (const [, link, path] of named) expect(existsSync(folder(link ?? path ?? '')), link ?? path).toBe(true)
  })

  it('keep the first paragraph of README.md for the job', () => {
    const [title, job] = textOf('README.md').split('\n\n')
    expect(title).toBe('# Leafgap')
    expect(job).toMatch(/designer of studios[\s\S]*what room is left/)
  })

  it('let CI run what README.md says', () => {
    expect(textOf('.ci/run')).toContain('npm ci && npm test')
    expect(textOf('README.md')).toContain('npm ci && npm test')
  })

  it('give every sample its expected files', () => {
    for (const sample of ['garage', 'basement', 'outbuilding']) {
      for (const file of ['report.json', 'ledger.csv', 'plan.svg']) {
        expect(existsSync(folder(`samples/${sample}/expected/${file}`)), `${sample}/${file}`).toBe(true)
      }
    }
    for (const name of readdirSync(folder('samples/broken'))) {
      expect(existsSync(folder(`samples/broken/${name.replace(/\.(json|txt)$/, '.txt')}`)), name).toBe(true)
    }
  })
})

import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { MIGRATIONS } from '#project/migrations.ts'
import { VERSION } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { CATALOGUE, textOf } from '../support/samples.ts'

describe('migrations', () => {
  it('lead from version 1 to the present one without a gap', () => {
    expect(MIGRATIONS.map((step) => step.to)).toEqual(Array.from({ length: VERSION - 1 }, (_, i) => i + 2))
  })

  it('keep one file of every released version, and it still opens', () => {
    const files = readdirSync(new URL('../../samples/old-versions/', import.meta.url))
    expect(files.sort()).toEqual(Array.from({ length: VERSION }, (_, i) => `version-${i + 1}.json`))
    for (const file of files) expect(readProject(textOf(`samples/old-versions/${file}`), CATALOGUE).ok).toBe(true)
  })
})

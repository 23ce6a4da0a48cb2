import { readFileSync } from 'node:fs'
import { analyseScheme } from '#analysis/analyse.ts'
import type { SchemeResult } from '#analysis/results.ts'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'

export const CATALOGUE = builtInCatalogue()

/** The text of a file below the project's top folder. */
export function textOf(path: string): string {
  return readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8')
}

/** A sample as the page and the command line open it, frozen all through. */
export function openSample(name: string): Project {
  const read = readProject(textOf(`samples/${name}/project.json`), CATALOGUE)
  if (!read.ok) throw new Error(read.error.problems.map((problem) => problem.message).join('\n') || read.error.message)
  return deepFreeze(read.value.project)
}

/** The results of one scheme of a project, by its name. */
export function analyse(project: Project, schemeName: string): SchemeResult {
  const room = project.rooms[0]
  const scheme = project.schemes.find((candidate) => candidate.name === schemeName)
  if (!room || !scheme) throw new Error(`no scheme ${schemeName}`)
  const analysed = analyseScheme({ room, scheme, catalogue: projectCatalogue(project), quality: 'drag' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return analysed.value
}

/** Freezes a value and everything in it, so that a test fails where code writes into its input. */
export function deepFreeze<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null) {
    Object.freeze(value)
    for (const part of Object.values(value)) deepFreeze(part)
  }
  return value
}

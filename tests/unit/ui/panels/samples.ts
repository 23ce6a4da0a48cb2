import { readFileSync } from 'node:fs'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { createDocumentStore } from '#state/history.ts'
import { createResultsMemo } from '#state/results.ts'
import { followClosely } from '#state/shown.ts'
import { createViewStore } from '#state/view.ts'
import type { Session } from '#ui/session.ts'
import { invariant } from '#units/result.ts'

/** A sample as the page opens it. */
export function sampleProject(name: 'garage' | 'basement'): Project {
  const read = readProject(readFileSync(`samples/${name}/project.json`, 'utf8'), builtInCatalogue())
  invariant(read.ok, 'a sample can be read')
  return read.value.project
}

/** Everything the page works on, on one scheme of a project. */
export function sessionOn(project: Project, schemeName: string): Session {
  const scheme = project.schemes.find(({ name }) => name === schemeName)
  invariant(scheme, `there is a scheme called ${schemeName}`)
  const document = createDocumentStore(project)
  return {
    document,
    view: createViewStore({ roomId: project.rooms[0]!.id, schemeId: scheme.id }),
    builtIn: builtInCatalogue(),
    results: createResultsMemo(),
    shown: followClosely(document.store),
  }
}

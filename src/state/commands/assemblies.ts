import type { Scheme } from '#analysis/scheme.ts'
import { AS_IS, type Assembly } from '#assemblies/assembly.ts'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { copyOfAssembly, idProblem, OWN_SOURCE } from '#assemblies/ownAssembly.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import { LONGEST_NAME, LONGEST_SHORT_NAME, MOST_ASSEMBLIES } from '#project/limits.ts'
import { assemblyProblems } from '#project/ownAssemblies.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { freeId } from '#state/commands/edit.ts'
import { assignAssembly } from '#state/commands/surfaces.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Puts an own assembly into the project, in place of the one that had its id; a new id stands last. */
export function saveAssembly(assembly: Assembly): Command {
  return { label: `save ${assembly.shortName.trim()}`, apply: (project) => withSaved(project, assembly) }
}

/** Saves an own assembly and builds it against surfaces of a scheme, in one step. */
export function saveAndBuild(assembly: Assembly, schemeId: string, surfaceIds: readonly string[]): Command {
  return {
    label: `build ${assembly.shortName.trim()}`,
    apply: (project) => {
      const saved = withSaved(project, assembly)
      if (!saved.ok) return saved
      const kept = saved.value.assemblies.find(({ id }) => id === assembly.id) ?? assembly
      return assignAssembly(schemeId, surfaceIds, kept).apply(saved.value)
    },
  }
}

/** Takes an own assembly out; surfaces that have it, in any scheme, go back to as is, and the step says how many. */
export function deleteAssembly(project: Project, id: string): Command {
  const shortName = project.assemblies.find((assembly) => assembly.id === id)?.shortName ?? id
  return {
    label: `delete ${shortName}${backWords(countUses(project, id))}`,
    apply: (current) => {
      const index = current.assemblies.findIndex((assembly) => assembly.id === id)
      if (index < 0) return noAssembly(id)
      const schemes = current.schemes.map((scheme) => withoutAssembly(scheme, id))
      return ok({ ...current, schemes, assemblies: current.assemblies.toSpliced(index, 1) })
    },
  }
}

/** Adds a copy of an assembly, own or built in, with a name that says so. */
export function duplicateAssembly(assembly: Assembly): Command {
  return {
    label: `copy ${assembly.shortName}`,
    apply: (project) =>
      withSaved(project, copyOfAssembly(assembly, freeAssemblyId(project), copyTitle(project, assembly))),
  }
}

export function renameAssembly(id: string, names: Pick<Assembly, 'name' | 'shortName'>): Command {
  return {
    label: 'rename assembly',
    apply: (project) => {
      const assembly = project.assemblies.find((candidate) => candidate.id === id)
      return assembly ? withSaved(project, { ...assembly, ...names }) : noAssembly(id)
    },
  }
}

/** The first id for an own assembly that nothing in this project has. */
export function freeAssemblyId(project: Project): string {
  return freeId('own', projectCatalogue(project).assemblies.keys())
}

/** "Copy of ...", numbered where that is taken. */
export function copyTitle(project: Project, { name }: Pick<Assembly, 'name'>): string {
  return freeTitle(project, `Copy of ${name}`)
}

/** A name as it is, or with a number where an own assembly already has it. */
export function freeTitle(project: Project, wanted: string): string {
  const plain = wanted.slice(0, LONGEST_NAME - 4)
  let title = plain
  for (let n = 2; project.assemblies.some((other) => other.name === title); n += 1) title = `${plain} ${n}`
  return title
}

/** A shared assembly as it goes into this project, and a sentence for whatever had to be renamed on the way in. */
export function broughtIn(
  project: Project,
  shared: Assembly,
): { readonly assembly: Assembly; readonly told: readonly string[] } {
  const isTaken = shared.id === AS_IS || projectCatalogue(project).assemblies.has(shared.id)
  const id = isTaken ? freeAssemblyId(project) : shared.id
  const name = freeTitle(project, shared.name.trim())
  const told = [
    ...(isTaken ? [`Its id "${shared.id}" is already used here, so it was given "${id}".`] : []),
    ...(name === shared.name.trim() ? [] : [`An own assembly already has its name, so it is called "${name}".`]),
  ]
  return { assembly: { ...shared, id, name }, told }
}

/** How many surfaces have this assembly, over all schemes, and in how many schemes. */
export function countUses(project: Project, id: string): { readonly surfaces: number; readonly schemes: number } {
  const counts = project.schemes
    .map((scheme) => Object.values(scheme.choices).filter((choice) => choice.assembly === id).length)
    .filter((count) => count > 0)
  return { surfaces: counts.reduce((sum, count) => sum + count, 0), schemes: counts.length }
}

function backWords({ surfaces }: { readonly surfaces: number }): string {
  if (surfaces === 0) return ''
  return surfaces === 1 ? ', 1 surface back to as is' : `, ${surfaces} surfaces back to as is`
}

function withSaved(project: Project, assembly: Assembly): Result<Project, Refusal> {
  const named = { ...assembly, name: assembly.name.trim(), shortName: assembly.shortName.trim(), source: OWN_SOURCE }
  const refused = badAssembly(project, named)
  if (refused) return fail(refused)
  const index = project.assemblies.findIndex(({ id }) => id === named.id)
  if (index < 0) return ok({ ...project, assemblies: [...project.assemblies, named] })
  return ok({ ...project, assemblies: project.assemblies.with(index, named) })
}

function badAssembly(project: Project, assembly: Assembly): Refusal | null {
  const taken = idProblem(assembly.id, builtInCatalogue())
  if (taken !== null) return { code: 'id-taken', message: `It cannot be saved: ${taken}.` }
  const name = badName(project, assembly)
  if (name) return name
  const former = project.assemblies.find(({ id }) => id === assembly.id)
  if (former && former.surface !== assembly.surface && countUses(project, assembly.id).surfaces > 0) {
    const message = `"${former.name}" is built against a ${former.surface}, so it cannot become one for a ${assembly.surface}: save it as a copy.`
    return { code: 'wrong-surface', message }
  }
  if (!former && project.assemblies.length >= MOST_ASSEMBLIES) {
    return {
      code: 'too-many',
      message: `A project keeps at most ${MOST_ASSEMBLIES} own assemblies; delete some first.`,
    }
  }
  const problem = assemblyProblems(assembly, 'assembly')[0]
  return problem ? { code: 'bad-layers', message: `It was not saved. ${sentence(problem.message)}` } : null
}

/** A file problem without the place in the file, which nobody sees on the page. */
function sentence(problem: string): string {
  const plain = problem.replace(/, at assembly\S*$/, '').replace(/^"[^"]*": /, '')
  return `${plain.charAt(0).toUpperCase()}${plain.slice(1)}.`
}

function badName(project: Project, { id, name, shortName }: Assembly): Refusal | null {
  if (name === '') return { code: 'no-name', message: 'An assembly needs a name.' }
  if (shortName === '')
    return { code: 'no-name', message: 'An assembly needs a short name, for its mark on the ruler.' }
  if (name.length > LONGEST_NAME) {
    return { code: 'long-name', message: `A name has at most ${LONGEST_NAME} letters; shorten this one.` }
  }
  if (shortName.length > LONGEST_SHORT_NAME) {
    return { code: 'long-name', message: `A short name has at most ${LONGEST_SHORT_NAME} letters; shorten this one.` }
  }
  if (!project.assemblies.some((other) => other.id !== id && other.name === name)) return null
  return {
    code: 'name-taken',
    message: `There is already an own assembly called "${name}"; give this one another name.`,
  }
}

function withoutAssembly(scheme: Scheme, id: string): Scheme {
  if (!Object.values(scheme.choices).some((choice) => choice.assembly === id)) return scheme
  const choices = Object.fromEntries(
    Object.entries(scheme.choices).map(([surface, choice]) => [
      surface,
      choice.assembly === id ? { ...choice, assembly: AS_IS } : choice,
    ]),
  )
  return { ...scheme, choices }
}

function noAssembly(id: string): Result<never, Refusal> {
  return fail({ code: 'no-assembly', message: `There is no own assembly "${id}" in this project.` })
}

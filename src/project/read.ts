import type { Catalogue } from '#assemblies/assembly.ts'
import { meaningProblems } from '#project/meaning.ts'
import { MIGRATIONS } from '#project/migrations.ts'
import { type FileProblem, problemsOf } from '#project/problems.ts'
import { FORMAT, type Project, VERSION } from '#project/project.ts'
import { dropRepeatedCorners } from '#project/repeatedCorners.ts'
import { projectSchema } from '#project/schema.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Why a file could not be opened. The open project is never touched. */
export interface ProjectFileError {
  readonly kind: 'not-json' | 'not-a-project' | 'too-new' | 'cannot-upgrade' | 'invalid'
  /** One sentence: what is wrong and what now. */
  readonly message: string
  /** One line a problem, each naming its place. */
  readonly problems: readonly FileProblem[]
  readonly cause?: unknown
}

export interface ReadProject {
  readonly project: Project
  /** Sentences about what was put right on the way in, such as a repeated corner that was dropped. */
  readonly warnings: readonly string[]
}

/**
 * Reads a project file: parse, recognise, upgrade step by step, check strictly.
 * @param text  the file's text
 * @param catalogue  the built-in assemblies and existing constructions the file may name beside its own
 */
export function readProject(text: string, catalogue: Catalogue): Result<ReadProject, ProjectFileError> {
  const parsed = parse(text)
  if (!parsed.ok) return parsed
  const recognised = recognise(parsed.value)
  if (!recognised.ok) return recognised
  const upgraded = upgrade(recognised.value)
  if (!upgraded.ok) return upgraded
  const checked = projectSchema.safeParse(upgraded.value)
  if (!checked.success) return invalid(problemsOf(checked.error.issues, upgraded.value))
  const { project, warnings } = dropRepeatedCorners(checked.data)
  const problems = meaningProblems(project, catalogue)
  return problems.length > 0 ? invalid(problems) : ok({ project, warnings })
}

function parse(text: string): Result<unknown, ProjectFileError> {
  try {
    return ok(JSON.parse(text.replace(/^\uFEFF/, '')))
  } catch (cause) {
    const message = `This is not readable JSON (${cause instanceof Error ? cause.message : 'no reason given'}).`
    return fail({ kind: 'not-json', message, problems: [], cause })
  }
}

type JsonObject = Record<string, unknown>

function recognise(value: unknown): Result<JsonObject, ProjectFileError> {
  const object = isObject(value) ? value : {}
  if (object['format'] !== FORMAT) {
    const message = `This is JSON, but not a Leafgap project: its "format" has to be "${FORMAT}".`
    return fail({ kind: 'not-a-project', message, problems: [] })
  }
  const version = object['version']
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return invalid([
      { where: 'version', message: `"version" has to be a whole number, at most ${VERSION}, at version` },
    ])
  }
  if (version > VERSION) {
    const message = `This file is version ${version} of the format and this Leafgap reads up to ${VERSION}: open it with a newer one.`
    return fail({ kind: 'too-new', message, problems: [] })
  }
  return ok(object)
}

function upgrade(object: JsonObject): Result<JsonObject, ProjectFileError> {
  let current = object
  for (const step of MIGRATIONS.slice(Number(object['version']) - 1)) {
    try {
      current = { ...step.up(current), version: step.to }
    } catch (cause) {
      const message = `This file could not be brought to version ${step.to} of the format (${step.why}).`
      return fail({ kind: 'cannot-upgrade', message, problems: [], cause })
    }
  }
  return ok(current)
}

function invalid(problems: readonly FileProblem[]): Result<never, ProjectFileError> {
  const more = problems.length > 1 ? ` (and ${problems.length - 1} more)` : ''
  return fail({ kind: 'invalid', message: `The project cannot be opened: ${problems[0]?.message}${more}.`, problems })
}

function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

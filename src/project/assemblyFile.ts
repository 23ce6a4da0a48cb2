import { z } from 'zod'
import type { Assembly } from '#assemblies/assembly.ts'
import { typedAssemblySchema } from '#assemblies/schema.ts'
import { assemblyProblems } from '#project/ownAssemblies.ts'
import { type FileProblem, problemOf } from '#project/problems.ts'
import { fail, ok, type Result } from '#units/result.ts'

export const ASSEMBLY_FORMAT = 'leafgap-assembly'
export const ASSEMBLY_VERSION = 1

/** Why a shared assembly could not be read; nothing of it was taken. */
export interface AssemblyFileError {
  /** One sentence: what is wrong. */
  readonly message: string
  /** One line a problem, each naming its place. */
  readonly problems: readonly FileProblem[]
}

const recognised = z.looseObject({ format: z.literal(ASSEMBLY_FORMAT), version: z.unknown() })
const file = z.strictObject({
  format: z.literal(ASSEMBLY_FORMAT),
  version: z.literal(ASSEMBLY_VERSION),
  assembly: typedAssemblySchema,
})

/** One assembly as the text of a file that can be sent on. */
export function writeAssembly(assembly: Assembly): string {
  return `${JSON.stringify({ format: ASSEMBLY_FORMAT, version: ASSEMBLY_VERSION, assembly }, null, 2)}\n`
}

/** True where a text says that it is a shared assembly, whatever else is in it. */
export function isAssemblyFile(text: string): boolean {
  return recognised.safeParse(parsed(text)).success
}

/** Reads a shared assembly: parse, recognise, check strictly. */
export function readAssembly(text: string): Result<Assembly, AssemblyFileError> {
  const value = parsed(text)
  if (value === undefined) return fail({ message: 'This is not readable JSON.', problems: [] })
  const head = recognised.safeParse(value)
  if (!head.success) {
    const message = `This is JSON, but not a shared assembly: its "format" has to be "${ASSEMBLY_FORMAT}".`
    return fail({ message, problems: [] })
  }
  const { version } = head.data
  if (typeof version === 'number' && version > ASSEMBLY_VERSION) {
    const message = `This file is version ${version} of the format and this Leafgap reads up to ${ASSEMBLY_VERSION}: open it with a newer one.`
    return fail({ message, problems: [] })
  }
  const checked = file.safeParse(value)
  if (!checked.success) return invalid(checked.error.issues.map((issue) => problemOf(issue, value)))
  const problems = assemblyProblems(checked.data.assembly, 'assembly')
  return problems.length > 0 ? invalid(problems) : ok(checked.data.assembly)
}

/** undefined: no JSON. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''))
  } catch {
    return undefined
  }
}

function invalid(problems: readonly FileProblem[]): Result<never, AssemblyFileError> {
  const more = problems.length > 1 ? ` (and ${problems.length - 1} more)` : ''
  return fail({ message: `The assembly cannot be opened: ${problems[0]?.message}${more}.`, problems })
}

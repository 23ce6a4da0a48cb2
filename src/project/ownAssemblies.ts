import type { Assembly, Catalogue } from '#assemblies/assembly.ts'
import { idProblem, ownAssemblyProblems } from '#assemblies/ownAssembly.ts'
import { LONGEST_CAUTION, LONGEST_NAME, LONGEST_SHORT_NAME, MOST_LAYERS } from '#project/limits.ts'
import type { FileProblem } from '#project/problems.ts'

/** What a file's own assemblies can still say wrong once they have the right shape. */
export function ownAssembliesProblems(own: readonly Assembly[], builtIn: Catalogue): readonly FileProblem[] {
  return own.flatMap((assembly, index) => {
    const at = `assemblies[${index}]`
    const taken = idProblem(assembly.id, builtIn)
    return [
      ...(taken === null ? [] : [{ where: `${at}.id`, message: `${taken}, at ${at}.id` }]),
      ...assemblyProblems(assembly, at),
    ]
  })
}

/** What one assembly says wrong, each line with its place under `at`: its layers, and texts longer than a page holds. */
export function assemblyProblems(assembly: Assembly, at: string): readonly FileProblem[] {
  const layers = ownAssemblyProblems(assembly).map(({ layer, message }): FileProblem => {
    const where = layer === null ? `${at}.layers` : `${at}.layers[${layer - 1}]`
    return { where, message: `"${assembly.name}": ${message.replace(/\.$/, '')}, at ${where}` }
  })
  return [...layers, ...sizeProblems(assembly, at)]
}

function sizeProblems(assembly: Assembly, at: string): FileProblem[] {
  const texts: readonly (readonly [string, string, number])[] = [
    ['id', assembly.id, LONGEST_ID],
    ['name', assembly.name, LONGEST_NAME],
    ['shortName', assembly.shortName, LONGEST_SHORT_NAME],
    ...assembly.cautions.map((text, i) => [`cautions[${i}]`, text, LONGEST_CAUTION] as const),
  ]
  const long = texts.flatMap(([key, text, most]) =>
    text.length > most
      ? [{ where: `${at}.${key}`, message: `a text here has at most ${most} letters, at ${at}.${key}` }]
      : [],
  )
  if (assembly.layers.length <= MOST_LAYERS) return long
  const where = `${at}.layers`
  return [...long, { where, message: `an assembly has at most ${MOST_LAYERS} layers, at ${where}` }]
}

/** As every id of the file. */
const LONGEST_ID = 100

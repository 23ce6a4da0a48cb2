import type { Layer } from '#assemblies/layer.ts'
import { type LayerProblem, layerProblems, numberProblems } from '#assemblies/layerProblems.ts'
import { readLayer, STAND_INS } from '#cli/rate/layer.ts'
import { writtenAs } from '#cli/rate/words.ts'
import type { SquareMetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** One layered system to be rated. */
export interface RateSystem {
  readonly id: string | number
  /** Of the specimen; absent: a laboratory wall. */
  readonly areaM2?: SquareMetres | undefined
  /** Far side to room. */
  readonly layers: readonly Layer[]
}

/** Largest specimen worth asking about, m2. @source common practice, no source */
const MAX_AREA_M2 = 1000
/** `name` and `note` are the writer's own and let be. */
const SYSTEM_KEYS = ['id', 'areaM2', 'layers', 'name', 'note']

/** Every system of the input, or every problem of all of them, one sentence each. */
export function readSystems(value: unknown): Result<readonly RateSystem[], readonly string[]> {
  const systems = isObject(value) ? value['systems'] : undefined
  if (!Array.isArray(systems)) {
    return fail(['the input has to be an object with a list of systems: {"systems":[{"id":"W1","layers":[...]}]}'])
  }
  if (systems.length === 0) return fail(['there are no systems: "systems" is an empty list'])
  const firstWith = new Map<string, number>()
  const read = systems.map((system: unknown, index) => readSystem(system, index + 1, firstWith))
  const problems = read.flatMap((result) => (result.ok ? [] : result.error))
  return problems.length > 0 ? fail(problems) : ok(read.flatMap((result) => (result.ok ? [result.value] : [])))
}

/** @param firstWith the number of the first system with each id, kept over all of them */
function readSystem(
  value: unknown,
  number: number,
  firstWith: Map<string, number>,
): Result<RateSystem, readonly string[]> {
  if (!isObject(value)) return fail([`system ${number}: a system has to be an object with "id" and "layers"`])
  const id = readId(value['id'])
  const first = id === null ? undefined : firstWith.get(String(id))
  const name = systemName(id, number, first)
  const problems: string[] = []
  if (id === null) problems.push(`${name}: it needs an "id", a text or a number to know it by`)
  else if (first === undefined) firstWith.set(String(id), number)
  else problems.push(`${name}: its id is that of system number ${first} already; give each system an id of its own`)
  for (const key of Object.keys(value).filter((known) => !SYSTEM_KEYS.includes(known))) {
    problems.push(`${name}: "${key}" is not a key of a system; it has ${SYSTEM_KEYS.join(', ')}`)
  }
  const areaM2 = value['areaM2']
  if (areaM2 !== undefined && !isArea(areaM2)) {
    problems.push(`${name}: "areaM2" is ${writtenAs(areaM2)}; it has to be a number above 0 and at most ${MAX_AREA_M2}`)
  }
  const layers = readLayers(value['layers'], name)
  if (!layers.ok) problems.push(...layers.error)
  if (problems.length > 0 || !layers.ok || id === null) return fail(problems)
  return ok({ id, layers: layers.value, ...(isArea(areaM2) ? { areaM2 } : {}) })
}

function systemName(id: string | number | null, number: number, first: number | undefined): string {
  if (id === null) return `system ${number}`
  return first === undefined ? `system ${id}` : `system ${id} (number ${number})`
}

function readId(value: unknown): string | number | null {
  if (typeof value === 'number' && Number.isFinite(value)) return value
  return typeof value === 'string' && value.trim() !== '' ? value : null
}

function isArea(value: unknown): value is SquareMetres {
  return typeof value === 'number' && value > 0 && value <= MAX_AREA_M2
}

/** Layers of which all are sound, or every problem: each layer's own, then those of their order. */
function readLayers(value: unknown, system: string): Result<readonly Layer[], readonly string[]> {
  if (!Array.isArray(value)) return fail([`${system}: it needs "layers", a list from the far side to the room`])
  const read = value.map(readLayer)
  const layers = read.map(({ layer }) => layer ?? STAND_INS.board)
  // A layer of no known kind leaves the order unknown, so only what each layer is by itself is told then.
  const judged = read.some(({ layer }) => layer === null) ? numberProblems(layers) : layerProblems(layers)
  const problems = [
    ...read.flatMap(({ problems: own, name }, index) =>
      own.map((text) => ({ layer: index + 1, text: `, layer ${index + 1}${name}: ${text}` })),
    ),
    ...judged.map((problem) => ({ layer: problem.layer, text: problemText(problem) })),
  ]
  if (problems.length === 0) return ok(layers)
  return fail(problems.toSorted((a, b) => a.layer - b.layer).map(({ text }) => `${system}${text}`))
}

/** To stand after a system's name: ", layer 3 (cavity): its link needs ..." or ": there are no layers". */
export function problemText({ layer, message }: LayerProblem): string {
  const text = `${message.charAt(0).toLowerCase()}${message.slice(1)}`.replace(/\.$/, '')
  return layer === 0 ? `: ${text}` : `, ${text}`
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

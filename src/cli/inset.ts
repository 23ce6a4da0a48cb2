import { z } from 'zod'
import { done, type Outcome, readInput, refused } from '#cli/io.ts'
import { type Inset, type InsetInput, type InsetRefusal, insetRoom } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'
import { problemOf } from '#project/problems.ts'

/** What is no finite number (1e999, or null, which stands for NaN in JSON) is refused by the geometry in its own words. */
const number = z
  .custom<number | null>((value) => typeof value === 'number' || value === null)
  .transform((value) => value ?? Number.NaN)
const point = z.tuple([number, number]).transform(([x, y]): Point => [x, y])
/** Other keys, such as an id of the caller's, are let be. */
const input = z.object({
  outline: z.array(point),
  depthsMm: z.array(number),
  obstacles: z
    .array(z.object({ outline: z.array(point), depthsMm: z.array(number) }))
    .nullish()
    .transform((obstacles) => obstacles ?? []),
})

/** `leafgap inset FILE|-`: what is left of outlines after a depth on every wall, as JSON. */
export async function insetCommand(file: string): Promise<Outcome> {
  const text = await readInput(file)
  if (!text.ok) return refused([text.error])
  const parsed = parseJson(text.value)
  if (parsed === undefined) return refused([`${file} is not readable JSON`])
  return Array.isArray(parsed) ? insetMany(parsed) : insetOne(parsed)
}

function insetOne(value: unknown): Outcome {
  const answer = insetValue(value)
  if ('refused' in answer) return refused([answer.refused.message])
  return done(toText(answer))
}

function insetMany(values: readonly unknown[]): Outcome {
  const answers = values.map(insetValue)
  const problems = answers.flatMap((answer, i) =>
    'refused' in answer ? [`item ${i + 1}: ${answer.refused.message}`] : [],
  )
  return problems.length > 0 ? refused(problems, toText(answers)) : done(toText(answers))
}

type Answer = ReturnType<typeof insetReport> | { readonly refused: InsetRefusal | ShapeRefusal }

interface ShapeRefusal {
  readonly code: 'not-an-inset'
  readonly message: string
  readonly walls: readonly number[]
}

function insetValue(value: unknown): Answer {
  const shaped = input.safeParse(value)
  if (!shaped.success) {
    const message = shaped.error.issues.map((issue) => problemOf(issue, value).message).join('; ')
    return { refused: { code: 'not-an-inset', message, walls: [] } }
  }
  const inset = insetRoom(shaped.data satisfies InsetInput)
  return inset.ok ? insetReport(inset.value) : { refused: inset.error }
}

/** The inset as the contract's JSON. */
function insetReport(inset: Inset) {
  return {
    clear: inset.clear.map(({ outline, holes, areaMm2 }) => ({ outline, holes, areaMm2 })),
    strips: inset.strips.map(({ wall, outline, holes, areaMm2 }) => ({ wall, outline, holes, areaMm2 })),
    walls: inset.walls.map(({ wall, clearLengthMm, swallowed, areaMm2 }) => ({
      wall,
      clearLengthMm,
      swallowed,
      areaMm2,
    })),
    outlineMm2: inset.outlineMm2,
    obstaclesMm2: inset.obstaclesMm2,
    gainedMm2: inset.gainedMm2,
    lostMm2: inset.lostMm2,
    warnings: inset.warnings,
  }
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

function toText(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`
}

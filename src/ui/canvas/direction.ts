import { fail, ok, type Result } from '#units/result.ts'

/** Degrees counter-clockwise from right, as in the plan. */
const WORDS: Readonly<Record<string, number>> = { right: 0, up: 90, left: 180, down: 270 }

/**
 * Reads a typed direction: right, up, left, down (their first letter is enough), or degrees counter-clockwise from right.
 * @returns degrees from 0 up to 360, or a sentence saying what was expected
 */
export function parseDirection(text: string): Result<number, string> {
  const tidy = text
    .trim()
    .toLowerCase()
    .replace(',', '.')
    .replace(/\s*(?:°|degrees?|deg)$/, '')
  for (const [word, degrees] of Object.entries(WORDS)) {
    if (tidy !== '' && word.startsWith(tidy)) return ok(degrees)
  }
  const degrees = Number(tidy)
  if (tidy !== '' && Number.isFinite(degrees)) return ok(((degrees % 360) + 360) % 360)
  return fail(
    `"${text.trim()}" is not a direction: write right, up, left, down, or degrees counter-clockwise from right.`,
  )
}

/** Up, 90°; or 37.5°. */
export function directionName(degrees: number): string {
  const rounded = Math.round(degrees * 10) / 10
  const word = Object.entries(WORDS).find(([, value]) => value === rounded % 360)?.[0]
  return word ? `${word}, ${rounded % 360}°` : `${rounded}°`
}

/** The direction an arrow key stands for; null for any other key. */
export function arrowDirection(key: string): string | null {
  return key.startsWith('Arrow') ? key.slice(5).toLowerCase() : null
}

/** A step of a length in a direction; whole quarter turns are exact. */
export function stepFrom(from: readonly [number, number], length: number, degrees: number): readonly [number, number] {
  const quarter = degrees / 90
  const [cos, sin] = Number.isInteger(quarter)
    ? ([
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ][quarter % 4] ?? [1, 0])
    : [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  return [from[0] + length * (cos ?? 1), from[1] + length * (sin ?? 0)]
}

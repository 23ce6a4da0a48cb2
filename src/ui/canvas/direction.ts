import { fail, ok, type Result } from '#units/result.ts'

/** Degrees counter-clockwise from right, as in the plan. */
const WORDS: Readonly<Record<string, number>> = { right: 0, up: 90, left: 180, down: 270 }
/** Degrees turned from the wall before, counter-clockwise; the first word of a turn may be cut to its first letter. */
const TURNS: Readonly<Record<string, number>> = { left: 90, right: -90 }

/** A direction that turns with the last wall, so that it can be asked for again at the next one. */
const RELATIVE = /^(?:[+-]\s*\d|[a-z]+\s+turn$)/

/**
 * Reads a typed direction: right, up, left, down (their first letter is enough); degrees counter-clockwise from right; or a
 * turn from the last wall: "left turn", "right turn", or degrees with a sign, +45 to the left, -90 to the right.
 * @param before  direction of the last wall, degrees; a first wall turns from right
 * @returns degrees from 0 up to 360, or a sentence saying what was expected
 */
export function parseDirection(text: string, before = 0): Result<number, string> {
  const tidy = text
    .trim()
    .toLowerCase()
    .replace(',', '.')
    .replace(/[−–]/g, '-')
    .replace(/\s*(?:°|degrees?|deg)$/, '')
  const turn = /^([a-z]+)\s+turn$/.exec(tidy)?.[1]
  const words = turn === undefined ? WORDS : TURNS
  for (const [word, degrees] of Object.entries(words)) {
    if (tidy !== '' && word.startsWith(turn ?? tidy))
      return ok(wholeTurn(turn === undefined ? degrees : before + degrees))
  }
  const degrees = Number(tidy.replace(/^([+-])\s+/, '$1'))
  if (tidy === '' || !Number.isFinite(degrees)) return fail(notADirection(text))
  return ok(wholeTurn(RELATIVE.test(tidy) ? before + degrees : degrees))
}

function notADirection(text: string): string {
  return `"${text.trim()}" is not a direction: write right, up, left, down, degrees counter-clockwise from right, or left turn, right turn.`
}

/** From 0 up to 360; what lies there already keeps its digits. */
function wholeTurn(degrees: number): number {
  return degrees >= 0 && degrees < 360 ? degrees : ((degrees % 360) + 360) % 360
}

/** Up, 90°; or 37.5°. */
export function directionName(degrees: number): string {
  const rounded = Math.round(degrees * 10) / 10
  const word = directionWord(rounded)
  return word ? `${word}, ${rounded % 360}°` : `${rounded}°`
}

/** What a direction is written as in its field: up, or 37.5. */
export function directionText(degrees: number): string {
  return directionWord(degrees) ?? String(Math.round(degrees * 1000) / 1000)
}

/** The four directions that have a word, in the order they are offered. */
export const DIRECTION_WORDS: readonly string[] = Object.keys(WORDS)

function directionWord(degrees: number): string | undefined {
  return Object.entries(WORDS).find(([, value]) => value === degrees % 360)?.[0]
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

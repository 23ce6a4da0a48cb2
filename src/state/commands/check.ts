import { DEEPEST_MM, LARGEST_MM, LONGEST_NAME } from '#project/limits.ts'
import type { Refusal } from '#state/command.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A refusal where a typed size is not a positive number, or larger than any room. */
export function positive(what: string, size: Millimetres): Refusal | null {
  if (!(Number.isFinite(size) && size > 0)) {
    return { code: 'not-positive', message: `${what} has to be more than 0; the drawing was kept as it was.` }
  }
  if (size <= LARGEST_MM) return null
  return { code: 'too-large', message: `${what} has to be at most ${LARGEST_MM / 1000} m; check its unit.` }
}

/** A refusal where a distance that may be nothing is less than that, or larger than any room. */
export function notNegative(what: string, size: Millimetres, most: Millimetres = LARGEST_MM): Refusal | null {
  if (!(Number.isFinite(size) && size >= 0)) {
    return { code: 'negative', message: `${what} cannot be less than 0; the drawing was kept as it was.` }
  }
  if (size <= most) return null
  return { code: 'too-large', message: `${what} has to be at most ${most / 1000} m; check its unit.` }
}

/** The same for boards and linings, which are never as deep as a room. */
export function notTooDeep(what: string, size: Millimetres): Refusal | null {
  return notNegative(what, size, DEEPEST_MM)
}

/** A refusal where a place is not a number, or too far out. */
export function onThePlan(what: string, ...coordinates: readonly Millimetres[]): Refusal | null {
  if (coordinates.some((value) => !Number.isFinite(value))) {
    return { code: 'not-a-place', message: `${what} needs a place of two numbers; the drawing was kept as it was.` }
  }
  if (coordinates.every((value) => Math.abs(value) <= LARGEST_MM)) return null
  const message = `${what} would lie more than ${LARGEST_MM / 1000} m from the plan's origin; it was kept where it was.`
  return { code: 'too-far', message }
}

/** A refusal where something has no name, or one too long to print. */
export function named(what: string, name: string): Refusal | null {
  if (name.trim() === '') return { code: 'no-name', message: `${what} needs a name; type one.` }
  if (name.trim().length <= LONGEST_NAME) return null
  return { code: 'long-name', message: `A name has at most ${LONGEST_NAME} letters; shorten this one.` }
}

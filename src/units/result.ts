/** Outcome of anything the user's input can make fail: a value, or a tagged error that says why. */
export type Result<Value, Failure> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly error: Failure }

export function ok<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value }
}

export function fail<Failure>(error: Failure): { readonly ok: false; readonly error: Failure } {
  return { ok: false, error }
}

/** Ends a switch over a tagged union: the compiler refuses a forgotten case. */
export function unreachable(value: never): never {
  throw new Error(`unreachable case: ${JSON.stringify(value)}`)
}

/** Throws when one of our own promises is broken; never for user input. */
export function invariant(condition: unknown, promise: string): asserts condition {
  if (!condition) throw new Error(`broken promise: ${promise}`)
}

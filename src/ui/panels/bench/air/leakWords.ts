import type { SurfaceResult } from '#analysis/results.ts'
import type { Decibels } from '#units/quantity.ts'

/** "Caps Wall 2 near 52 dB at 500 Hz, however good it is; by itself it is rated STC 61." */
export function capSentence({ label, rating }: SurfaceResult, capDb: Decibels | null): string {
  const own = rating === null ? '' : `; by itself it is rated STC ${rating.stc}`
  if (capDb === null) return `Caps nothing: ${label} keeps what it is rated.`
  return `Caps ${label} near ${Math.round(capDb)} dB at 500 Hz, however good it is${own}.`
}

/** In a table: "near 52 dB", or why there is no figure. */
export function capWords({ rating }: SurfaceResult, capDb: Decibels | null): string {
  if (rating === null) return 'not known: the surface is not rated'
  return capDb === null ? 'no cap: closed' : `near ${Math.round(capDb)} dB`
}

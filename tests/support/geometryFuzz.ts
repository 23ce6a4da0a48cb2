import fc from 'fast-check'
import { FAMILIES, type Family } from './geometryRooms.ts'

/** A room by name: the same draw always gives the same room, and a failure prints it. */
export interface RoomDraw {
  readonly family: Family
  readonly seed: number
}

/** Draws over the ten families, or some of them. Half of the rooms (odd seeds) stand askew where a test rotates them. */
export function roomDraws(families: readonly Family[] = FAMILIES): fc.Arbitrary<RoomDraw> {
  return fc.record({ family: fc.constantFrom(...families), seed: fc.nat(1_000_000) })
}

/** Runs of a property: the seed is fixed so that a failing machine and ours see the same rooms; set FUZZ_SEED to vary it. */
export function fuzzRuns(numRuns: number): fc.Parameters<unknown> {
  const seed = Number(process.env['FUZZ_SEED'] ?? 20_240_607)
  return { numRuns, seed, endOnFailure: true, verbose: 1 }
}

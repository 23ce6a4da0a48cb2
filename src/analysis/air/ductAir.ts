import { faceVelocity, velocityLimit } from '#acoustics/airflow.ts'
import type { AirNeed } from '#analysis/air/need.ts'
import { type AirLimit, ductLimit } from '#analysis/air/quiet.ts'
import { ductAreaM2 } from '#analysis/paths/ductPaths.ts'
import type { Duct, Room } from '#analysis/room.ts'
import type { Receiver } from '#analysis/target.ts'
import type { Millimetres } from '#units/quantity.ts'

/** How fast the air in one duct has to move. */
export interface DuctAir {
  readonly limit: AirLimit
  /** Highest velocity in its free area for that limit, m/s; null: it neither supplies nor returns air. */
  readonly limitMS: number | null
  /** False: the limit lies outside what is in print. */
  readonly isPrinted: boolean
  /** Its share of the needed airflow, L/s; null: not known, or it carries none. */
  readonly shareLPerS: number | null
  readonly velocityMS: number | null
  /** Diameter of a round duct that would be just slow enough; null: not known. */
  readonly enoughDiameterMm: Millimetres | null
}

/**
 * Velocity in a duct against its limit. All the needed air comes in by the supply ducts and goes out by the returns; ducts
 * of one purpose share it by their areas, as they do under one pressure.
 * @source shares: own choice; limits: acoustics/data/airflow.json, seen
 */
export function ductAir(duct: Duct, room: Room, need: AirNeed, receivers: readonly Receiver[]): DuctAir {
  const limit = ductLimit(duct, room, receivers)
  const { supplyMS, returnMS, isPrinted } = velocityLimit(limit.nc)
  const limitMS = duct.purpose === 'other' ? null : duct.purpose === 'supply' ? supplyMS : returnMS
  const shareLPerS = limitMS === null || need.lPerS === null ? null : need.lPerS * shareOf(duct, room)
  const velocityMS = shareLPerS === null ? null : faceVelocity(shareLPerS, ductAreaM2(duct))
  return {
    limit,
    limitMS,
    isPrinted,
    shareLPerS,
    velocityMS,
    enoughDiameterMm: shareLPerS === null || limitMS === null ? null : roundFor(shareLPerS, limitMS),
  }
}

function shareOf(duct: Duct, { ducts }: Room): number {
  const alike = (ducts ?? []).filter(({ purpose }) => purpose === duct.purpose)
  return ductAreaM2(duct) / alike.reduce((sum, other) => sum + ductAreaM2(other), 0)
}

/** A = Q/v, as a circle. */
function roundFor(lPerS: number, metresPerS: number): Millimetres {
  return Math.sqrt((4 * (lPerS / 1000)) / metresPerS / Math.PI) * 1000
}

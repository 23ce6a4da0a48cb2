import type { CubicMetres, Decibels, Millimetres, SquareMetres } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** Sabine's constant in metric units, s/m. @source Sabine's formula at about 20 C, memory */
const SABINE_S_PER_M = 0.161
/** Diffuse sound inside drives the surface with 6 dB less than its level says. @source ISO 12354-4, simplified, memory */
const DIFFUSE_TO_OUTSIDE_DB: Decibels = 6
/** 10 lg 2 pi: a small source on a hard plane spreads over half a sphere. */
const HALF_SPHERE_DB: Decibels = 8
/** 10 lg 4 pi: from the level at one metre in the open to the power. */
const POWER_OVER_ONE_METRE_DB: Decibels = 11
/** 10 lg 4: level of a diffuse room over power, A in m2. @source any acoustics textbook, memory */
const DIFFUSE_ROOM_DB: Decibels = 6
/** Nearer than this many times the root of its area a surface is no point. @source ISO 12354-4, simplified, memory */
const POINT_FROM_ROOTS = 1.5

/** Equivalent absorption area, m2, of a room with a reverberation time in s, both > 0. */
export function absorptionArea(volumeM3: CubicMetres, reverberationS: number): SquareMetres {
  invariant(volumeM3 > 0 && reverberationS > 0, 'a room with absorption has a volume and a reverberation time')
  return (SABINE_S_PER_M * volumeM3) / reverberationS
}

/**
 * What to add to level less loss for the level in the next room, dB: 10 lg(S/A).
 * @source L2 = L1 - TL + 10 lg(S/A), standard; the same relation in Long, Architectural Acoustics, 9.5, seen
 */
export function roomTerm(areaM2: SquareMetres, absorptionM2: SquareMetres): Decibels {
  invariant(areaM2 > 0 && absorptionM2 > 0, 'a surface has an area and a room absorbs')
  return 10 * Math.log10(areaM2 / absorptionM2)
}

/**
 * What to add to level less loss for the level outdoors, dB: -6 - 8 + 10 lg S - 20 lg r.
 * @param distanceMm  from the surface, > 0; holds where `isFarEnough`, nearer it says too much
 * @source ISO 12354-4 simplified, radiation over a half sphere, memory
 */
export function outdoorTerm(areaM2: SquareMetres, distanceMm: Millimetres): Decibels {
  invariant(areaM2 > 0 && distanceMm > 0, 'a surface has an area and a receiver a distance')
  return -DIFFUSE_TO_OUTSIDE_DB - HALF_SPHERE_DB + 10 * Math.log10(areaM2) - 20 * Math.log10(distanceMm / 1000)
}

/** True where a surface may be taken for a point: r > 1.5 sqrt(S). */
export function isFarEnough(areaM2: SquareMetres, distanceMm: Millimetres): boolean {
  return distanceMm / 1000 > POINT_FROM_ROOTS * Math.sqrt(areaM2)
}

/**
 * Level in a room of a talker whose level is known one metre off in the open, dB.
 * @source power = level + 11 dB, diffuse level = power + 6 - 10 lg A; any acoustics textbook, memory
 */
export function levelFromOneMetre(levelDb: Decibels, absorptionM2: SquareMetres): Decibels {
  invariant(absorptionM2 > 0, 'a room absorbs')
  return levelDb + POWER_OVER_ONE_METRE_DB + DIFFUSE_ROOM_DB - 10 * Math.log10(absorptionM2)
}

/** Level of several sounds together, dB; of none -Infinity, which is no sound. */
export function energySum(levels: readonly Decibels[]): Decibels {
  return 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0))
}

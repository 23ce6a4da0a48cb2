import { OCTAVES_HZ, type OctaveCurve } from '#acoustics/bands.ts'
import { lossOfFraction, octaveLoss, transmittedFraction } from '#acoustics/curve.ts'
import { crossing } from '#analysis/paths/crossed.ts'
import { gapIn, holeIn, type Leak } from '#analysis/paths/leakPaths.ts'
import type { SurfaceResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Airtightness, Hole, Scheme } from '#analysis/scheme.ts'
import type { Decibels } from '#units/quantity.ts'

/** Octave at which a leak is told in one number, Hz. @source our own choice */
const TOLD_HZ = 500

/** The loss a surface cannot pass however good it is, since a leak lets so much through: dB over OCTAVES_HZ, for its whole area. */
function capOf({ areaM2, lossDb }: Leak, grossM2: number): OctaveCurve {
  const share = areaM2 / grossM2
  return octaveLoss(lossDb).map((loss) => lossOfFraction(share * transmittedFraction(loss)))
}

function told(cap: OctaveCurve): Decibels {
  return cap[OCTAVES_HZ.indexOf(TOLD_HZ)]!
}

/** What the gap round a surface caps it at, at 500 Hz; null: it is closed, or nothing is known of the surface. */
export function gapCap(
  room: Room,
  surface: SurfaceResult,
  scheme: Pick<Scheme, 'airtightness' | 'leaks'>,
): Decibels | null {
  const one = crossing(room, surface)
  if (surface.rating === null || !(one.grossM2 > 0)) return null
  const gap = gapIn(scheme, one)
  return gap && told(capOf(gap, one.grossM2))
}

/** What an airtightness would cap a surface at where nothing is typed for it. */
export function airtightnessCap(room: Room, surface: SurfaceResult, airtightness: Airtightness): Decibels | null {
  return gapCap(room, surface, { airtightness })
}

/** What holes of one name cap a surface at, at 500 Hz; null: nothing is open. */
export function holeCap(room: Room, surface: SurfaceResult, hole: Hole): Decibels | null {
  const one = crossing(room, surface)
  const open = surface.rating === null ? null : holeIn(one, hole)
  return open && told(capOf(open, one.grossM2))
}

/** The surface that a leak spoils most: the one with the best rating; null: none is rated. */
export function mostSpoilt(surfaces: readonly SurfaceResult[]): SurfaceResult | null {
  return surfaces.reduce<SurfaceResult | null>((best, surface) => {
    if (surface.kind !== 'wall' || surface.rating === null || !(surface.soundAreaM2 > 0)) return best
    return best?.rating && best.rating.stc >= surface.rating.stc ? best : surface
  }, null)
}

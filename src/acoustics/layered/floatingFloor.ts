import type { BandCurve } from '#acoustics/bands.ts'
import { shiftCurve } from '#acoustics/curve.ts'
import table from '#acoustics/data/floatingFloor.json' with { type: 'json' }
import { modelLeaf } from '#acoustics/layered/leaf.ts'
import { isMasonryLeaf } from '#acoustics/layered/leafKind.ts'
import { gapStiffness } from '#acoustics/layered/resonance.ts'
import type { Guarded } from '#acoustics/layered/shallowGapGuard.ts'
import { isFloatingLink } from '#acoustics/layered/spread.ts'
import type { LayeredSystem } from '#acoustics/layered/system.ts'
import { RW, rate } from '#acoustics/rating.ts'
import type { Decibels, Hertz } from '#units/quantity.ts'

/**
 * Gain in Rw a layer on a spring brings to heavy construction at most.
 * @param resonance  of the layer on its spring against the base, Hz
 * @param base  Rw of the base alone, dB
 * @source ISO 12354-1:2017 Annex D, memory, data/floatingFloor.json
 */
export function creditedGain(resonance: Hertz, base: Decibels): Decibels {
  const { lowestHz, slopeToHz, atOneHzDb, perDecadeDb, above } = table.gain
  if (resonance <= slopeToHz) {
    return Math.max(0, atOneHzDb - perDecadeDb * Math.log10(Math.max(lowestHz, resonance)) - base / 2)
  }
  return above.find(({ upToHz }) => resonance <= upToHz)?.gainDb ?? 0
}

/** A heavy base, and the resonance of the one leaf that floats on it; the heavier side is the base, from either room. */
interface HeavyBase {
  readonly base: LayeredSystem
  readonly resonance: Hertz
}

function heavyBasesAt(system: LayeredSystem, cavity: number): readonly HeavyBase[] {
  const { leaves, cavities } = system
  const [far, room] = [leaves[cavity]!, leaves[cavity + 1]!]
  const [farMass, roomMass] = [modelLeaf(far, null).mass, modelLeaf(room, null).mass]
  const resonance = Math.sqrt(gapStiffness(cavities[cavity]!) * (1 / farMass + 1 / roomMass)) / (2 * Math.PI)
  const found: HeavyBase[] = []
  if (farMass >= roomMass && isMasonryLeaf(far) && cavity === cavities.length - 1) {
    found.push({ base: { leaves: leaves.slice(0, -1), cavities: cavities.slice(0, -1) }, resonance })
  }
  if (roomMass >= farMass && isMasonryLeaf(room) && cavity === 0) {
    found.push({ base: { leaves: leaves.slice(1), cavities: cavities.slice(1) }, resonance })
  }
  return found
}

/**
 * Lowers the curve of a floor floating on concrete or masonry to what the standard credits it with. The calculation
 * knows neither waves in the thickness of the layer nor the small bridges every screed has, and says 5 to 10 more.
 * @param predict  the method itself
 */
export function guardFloatingFloor(
  system: LayeredSystem,
  lossDb: BandCurve,
  predict: (system: LayeredSystem) => BandCurve,
): Guarded {
  const bases = system.cavities.flatMap((cavity, i) => (isFloatingLink(cavity.link) ? heavyBasesAt(system, i) : []))
  if (bases.length === 0) return { lossDb, notes: [] }
  const rule = { ...RW, valueStepDb: 0.1 }
  const limits = bases.map(({ base, resonance }) => {
    const bare = rate(predict(base), rule).value
    return bare + creditedGain(resonance, bare)
  })
  const calculated = rate(lossDb, rule).value
  const excess = calculated - Math.min(...limits)
  if (!(excess > 0)) return { lossDb, notes: [] }
  const text = `Held to Rw ${Math.floor(calculated - excess)}, what ISO 12354-1 credits a floor floating on this base with; the calculation alone says ${Math.floor(calculated)}, which floors as built do not reach.`
  return { lossDb: shiftCurve(lossDb, -excess), notes: [{ code: 'held-to-standard', text }] }
}

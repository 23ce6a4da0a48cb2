import { AIR_BULK_MODULUS } from '#acoustics/layered/air.ts'
import { modelLeaf } from '#acoustics/layered/leaf.ts'
import { modelSheet, thinPlateCriticalHz } from '#acoustics/layered/sheet.ts'
import type { Cavity, LayeredSystem, LeafSheet } from '#acoustics/layered/system.ts'
import type { Hertz } from '#units/quantity.ts'

/** Leaves on the springs of their air gaps: kg/m2 and N/m3. */
interface SpringChain {
  readonly masses: readonly number[]
  readonly springs: readonly number[]
}

/**
 * Stiffness of what fills a gap, N/m3: its air, a resilient layer instead of it, or a floor's mounts beside it. Links
 * are not counted.
 */
export function gapStiffness({ depthMm, link }: Cavity): number {
  const air = AIR_BULK_MODULUS / (depthMm / 1000)
  if (link.kind === 'resilient-layer') return 1e6 * link.dynamicStiffnessMNm3
  return link.kind === 'floor-mounts' ? air + 1e6 * link.dynamicStiffnessMNm3 : air
}

function chainOf(system: LayeredSystem, added: readonly number[]): SpringChain {
  return {
    masses: system.leaves.map((leaf) => modelLeaf(leaf, null).mass),
    springs: system.cavities.map((cavity, i) => gapStiffness(cavity) + (added[i] ?? 0)),
  }
}

/** How many of the chain's modes lie below a squared angular frequency (Sturm count). */
function modesBelow({ masses, springs }: SpringChain, omega2: number): number {
  let count = 0
  let pivot = 1
  for (let i = 0; i < masses.length; i++) {
    const left = springs[i - 1] ?? 0
    const taken = i === 0 ? 0 : (left * left) / (pivot || Number.EPSILON)
    pivot = left + (springs[i] ?? 0) - omega2 * masses[i]! - taken
    if (pivot < 0) count += 1
  }
  return count
}

/** Halvings of the search interval: the frequency is then known to 1e-10 of its upper bound. */
const HALVINGS = 40

/** Squared angular frequency of mode `mode`, 1 = lowest above rest, by bisection. */
function modeOmega2(chain: SpringChain, mode: number): number {
  let low = 0
  // Gershgorin: no mode lies above twice the stiffest leaf's own value; the sum is a safe bound.
  let high = chain.masses.reduce((sum, mass, i) => {
    return sum + (2 * ((chain.springs[i - 1] ?? 0) + (chain.springs[i] ?? 0))) / mass
  }, 0)
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2
    if (modesBelow(chain, middle) > mode) high = middle
    else low = middle
  }
  return (low + high) / 2
}

/** How a mode's spring energy spreads over the gaps. */
function gapEnergies({ masses, springs }: SpringChain, omega2: number): readonly number[] {
  const shape = [1]
  let force = 0
  springs.forEach((spring, i) => {
    force += omega2 * masses[i]! * shape[i]!
    shape.push(shape[i]! - force / spring)
  })
  const energies = springs.map((spring, i) => spring * (shape[i]! - shape[i + 1]!) ** 2)
  const total = energies.reduce((sum, energy) => sum + energy, 0)
  return energies.map((energy) => energy / total)
}

/** One gap for each mode, the one it squeezes hardest; no gap twice, so that each can be told by its gap. */
function gapsOfModes(energies: readonly (readonly number[])[]): readonly number[] {
  const pairs = energies.flatMap((shares, mode) => shares.map((share, gap) => ({ share, mode, gap })))
  const taken = new Map<number, number>()
  for (const { mode, gap } of pairs.toSorted((a, b) => b.share - a.share)) {
    if (!taken.has(mode) && ![...taken.values()].includes(gap)) taken.set(mode, gap)
  }
  return energies.map((_, mode) => taken.get(mode) ?? 0)
}

/** A frequency at which leaves swing against each other, and the gap it is told by. */
export interface LeafMode {
  readonly hz: Hertz
  readonly cavity: number
}

/**
 * Frequencies at which the leaves swing against each other on the air between them, rising.
 * @param added  stiffness of links beside the air, by gap, N/m3; absent: the air alone
 * @source eigenvalues of masses on adiabatic air springs, own derivation; for two leaves the classic mass-air-mass
 *   formula 59.9 sqrt((m1 + m2) / (d m1 m2))
 */
export function massAirMass(system: LayeredSystem, added: readonly number[] = []): readonly LeafMode[] {
  const chain = chainOf(system, added)
  const modes = chain.springs.map((_, i) => modeOmega2(chain, i + 1))
  const gaps = gapsOfModes(modes.map((omega2) => gapEnergies(chain, omega2)))
  return modes.map((omega2, i) => ({ hz: Math.sqrt(omega2) / (2 * Math.PI), cavity: gaps[i]! }))
}

/**
 * Frequency above which a sheet's bending waves run as fast as sound in air, Hz: its coincidence dip.
 */
export function criticalFrequency(sheet: LeafSheet): Hertz {
  return thinPlateCriticalHz(modelSheet(sheet))
}

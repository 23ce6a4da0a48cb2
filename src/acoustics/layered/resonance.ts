import { AIR_BULK_MODULUS } from '#acoustics/layered/air.ts'
import { modelLeaf } from '#acoustics/layered/leaf.ts'
import { modelSheet, thinPlateCriticalHz } from '#acoustics/layered/sheet.ts'
import type { LayeredSystem, LeafSheet } from '#acoustics/layered/system.ts'
import { materialAt } from '#acoustics/materials.ts'
import type { Hertz } from '#units/quantity.ts'

/** A frequency where a construction lets more through, and why. */
export interface Resonance {
  readonly hz: Hertz
  readonly kind: 'mass-air-mass' | 'coincidence'
  /** In plain words. */
  readonly cause: string
  /** What would move it. */
  readonly remedy: string
}

/** Leaves on the springs of their air gaps: kg/m2 and N/m3. */
interface SpringChain {
  readonly masses: readonly number[]
  readonly springs: readonly number[]
}

function chainOf(system: LayeredSystem): SpringChain {
  return {
    masses: system.leaves.map((leaf) => modelLeaf(leaf, null).mass),
    springs: system.cavities.map((cavity) => AIR_BULK_MODULUS / (cavity.depthMm / 1000)),
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

/** The gap that is squeezed hardest in a mode: where its spring energy lies. */
function busiestGap({ masses, springs }: SpringChain, omega2: number): number {
  const shape = [1]
  let force = 0
  springs.forEach((spring, i) => {
    force += omega2 * masses[i]! * shape[i]!
    shape.push(shape[i]! - force / spring)
  })
  const energies = springs.map((spring, i) => spring * (shape[i]! - shape[i + 1]!) ** 2)
  return energies.indexOf(Math.max(...energies))
}

/**
 * Frequencies at which the leaves swing against each other on the air between them, rising.
 * @source eigenvalues of masses on adiabatic air springs, own derivation; for two leaves the classic mass-air-mass
 *   formula 59.9 sqrt((m1 + m2) / (d m1 m2))
 */
export function massAirMass(system: LayeredSystem): readonly { readonly hz: Hertz; readonly cavity: number }[] {
  const chain = chainOf(system)
  return chain.springs.map((_, i) => {
    const omega2 = modeOmega2(chain, i + 1)
    return { hz: Math.sqrt(omega2) / (2 * Math.PI), cavity: busiestGap(chain, omega2) }
  })
}

/**
 * Frequency above which a sheet's bending waves run as fast as sound in air, Hz: its coincidence dip.
 */
export function criticalFrequency(sheet: LeafSheet): Hertz {
  return thinPlateCriticalHz(modelSheet(sheet))
}

/** Upper edge of the 5000 Hz band: dips above it are not on the curve. */
const HIGHEST_SHOWN_HZ = 5623

function coincidences(system: LayeredSystem): readonly Resonance[] {
  const found = new Map<string, Resonance>()
  for (const sheet of system.leaves.flatMap((leaf) => leaf.sheets)) {
    const hz = criticalFrequency(sheet)
    if (hz > HIGHEST_SHOWN_HZ) continue
    const name = `${materialAt(sheet.material, sheet.thicknessMm).name}, ${Math.round(sheet.thicknessMm * 10) / 10} mm`
    found.set(`${name} ${Math.round(hz)}`, {
      hz,
      kind: 'coincidence',
      cause: `coincidence of ${name}`,
      remedy: 'A different thickness on the other leaf, or a damping compound between two boards.',
    })
  }
  return [...found.values()]
}

/** Every dip a designer should know of, by rising frequency. */
export function resonancesOf(system: LayeredSystem): readonly Resonance[] {
  const gaps = massAirMass(system).map(({ hz, cavity }): Resonance => {
    const depth = Math.round(system.cavities[cavity]?.depthMm ?? 0)
    return {
      hz,
      kind: 'mass-air-mass',
      cause: `air gap of ${depth} mm resonates between its leaves`,
      remedy: 'A deeper gap or heavier leaves lower it.',
    }
  })
  return [...gaps, ...coincidences(system)].toSorted((a, b) => a.hz - b.hz)
}

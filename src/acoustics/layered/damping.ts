import materials from '#acoustics/data/materials.json' with { type: 'json' }
import type { SheetModel } from '#acoustics/layered/sheet.ts'
import type { Tone } from '#acoustics/layered/tone.ts'
import type { Workspace } from '#acoustics/layered/workspace.ts'

/** A joint filled with viscoelastic compound, SI units. */
export interface DampedJoint {
  /** Mass of the two sheets, kg/m2. */
  readonly mass: number
  /** Their own bending stiffnesses, N m. */
  readonly bending: number
  /** K1 and K2, extensional stiffnesses, N/m. */
  readonly extensionA: number
  readonly extensionB: number
  readonly lossA: number
  /** Distance between the two sheets' middle planes, m. */
  readonly distance: number
}

interface Complex {
  readonly re: number
  readonly im: number
}

/**
 * Damped joints of a leaf. With more than one, each couples its own two neighbours only: an approximation, the
 * sandwich of three sheets has no closed form as short.
 */
export function modelDampedJoints(sheets: readonly SheetModel[], joints: readonly number[]): readonly DampedJoint[] {
  return joints.flatMap((joint) => {
    const [a, b] = [sheets[joint], sheets[joint + 1]]
    if (a === undefined || b === undefined) return []
    return [
      {
        mass: a.mass + b.mass,
        bending: a.bending + b.bending,
        extensionA: a.extension,
        extensionB: b.extension,
        lossA: a.lossBase,
        distance: (a.thickness + b.thickness) / 2 + materials.damping.thicknessMm / 1000,
      },
    ]
  })
}

/**
 * Bending stiffness the compound adds by coupling its two sheets: d^2 K1 K2 / (K1 + K2) g / (1 + g),
 * g = G*(f) / (hv kb^2) (1/K1 + 1/K2), kb the free bending wavenumber of the pair. N m, complex.
 * @source Ross, Kerwin and Ungar (1959), memory; shear modulus in data/materials.json, never matched against print
 */
function jointBending(joint: DampedJoint, { hz, omega, stiffness }: Tone): Complex {
  const { shearPaAt1kHz, shearExponent, lossFactor, thicknessMm } = materials.damping
  const k1 = joint.extensionA * stiffness
  const k2 = joint.extensionB * stiffness
  const kb2 = omega * Math.sqrt(joint.mass / (joint.bending * stiffness))
  const shear = shearPaAt1kHz * (hz / 1000) ** shearExponent
  const gRe = (shear * (1 / k1 + 1 / k2)) / ((thicknessMm / 1000) * kb2)
  const gIm = gRe * lossFactor
  const norm = (1 + gRe) ** 2 + gIm ** 2
  const tied = (joint.distance ** 2 * k1 * k2) / (k1 + k2)
  const shareRe = (gRe * (1 + gRe) + gIm * gIm) / norm
  const shareIm = gIm / norm
  return {
    re: tied * (shareRe - joint.lossA * shareIm),
    im: tied * (shareIm + joint.lossA * shareRe),
  }
}

/** Sum over the joints of a leaf, N m. */
export function dampedBending(joints: readonly DampedJoint[], tone: Tone): Complex {
  let re = 0
  let im = 0
  for (const joint of joints) {
    const added = jointBending(joint, tone)
    re += added.re
    im += added.im
  }
  return { re, im }
}

/** Adds the joints' share B* kt^4 / (j w) to the leaf impedance at every node. */
export function addDampedBending(ws: Workspace, base: number, joints: readonly DampedJoint[], tone: Tone): void {
  const { re, im } = dampedBending(joints, tone)
  const { omega, k2 } = tone
  for (let n = 0; n < ws.nodes.count; n++) {
    const kt4 = (k2 * ws.nodes.sin2[n]!) ** 2
    ws.leafRe[base + n]! += (im * kt4) / omega
    ws.leafIm[base + n]! -= (re * kt4) / omega
  }
}

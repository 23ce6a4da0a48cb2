import { AIR_IMPEDANCE, SOUND_SPEED } from '#acoustics/layered/air.ts'
import { dampedBending } from '#acoustics/layered/damping.ts'
import type { LeafModel } from '#acoustics/layered/leaf.ts'
import { lossAt, type SheetModel } from '#acoustics/layered/sheet.ts'
import type { Tone } from '#acoustics/layered/tone.ts'

/** Beyond this share of grazing incidence a coincidence angle is no longer told apart from grazing. */
const STEEPEST_SINE = 0.995
/** Two angles closer than this share of the sharper one's width are treated as one. */
const SAME_ANGLE = 0.25
/** More coincidence angles than any construction has: one a kind of sheet and one a leaf. */
const MOST = 64

/** Angles of incidence at which a leaf follows the sound without resistance, and how sharply; scratch, rad. */
export interface Coincidences {
  readonly angle: Float64Array
  readonly width: Float64Array
  count: number
}

const FOUND: Coincidences = { angle: new Float64Array(MOST), width: new Float64Array(MOST), count: 0 }

/** Squared trace wavenumber (1/m2) of free bending waves of a Mindlin plate at omega. */
function freeWavenumber2(sheet: SheetModel, stiffness: number, omega: number): number {
  const d = sheet.bending * stiffness
  const s = sheet.shear * stiffness
  const w2 = omega * omega
  const a = s * d
  const b = s * sheet.inertia * w2 + w2 * sheet.mass * d
  const c = w2 * sheet.mass * (s - sheet.inertia * w2)
  return (b + Math.sqrt(b * b + 4 * a * c)) / (2 * a)
}

/** Squared wavenumber at which a leaf of several sheets coincides as a whole, 1/m2. */
function wholeWavenumber2(leaf: LeafModel, tone: Tone): number {
  const tied = leaf.damped.length > 0 ? dampedBending(leaf.damped, tone).re : 0
  return tone.omega * Math.sqrt(leaf.mass / (leaf.bending * tone.stiffness + tied))
}

/** Puts an angle in its place among those found, which stay in rising order. */
function insert(angle: number, width: number): void {
  const { angle: angles, width: widths } = FOUND
  let place = FOUND.count
  while (place > 0 && angles[place - 1]! > angle) {
    angles[place] = angles[place - 1]!
    widths[place] = widths[place - 1]!
    place -= 1
  }
  angles[place] = angle
  widths[place] = width
  FOUND.count += 1
}

function addWavenumber(x: number, loss: number, leaf: LeafModel, omega: number): void {
  const sine = (Math.sqrt(x) * SOUND_SPEED) / omega
  if (!(sine < STEEPEST_SINE) || FOUND.count === MOST) return
  const cosine = Math.sqrt(1 - sine * sine)
  const resistance = loss + (2 * AIR_IMPEDANCE) / (omega * leaf.mass * cosine)
  insert(Math.asin(sine), (0.25 * resistance * sine) / cosine)
}

/** Each kind of sheet may coincide by itself, and a leaf of several as a whole. */
function addLeaf(leaf: LeafModel, tone: Tone): void {
  const { hz, omega, stiffness } = tone
  // Shear only raises a sheet's critical frequency, so below the thin-plate value nothing coincides.
  if (hz * Math.sqrt(stiffness) < leaf.lowestCriticalHz) return
  const { sheets } = leaf
  let loss = Number.POSITIVE_INFINITY
  for (let i = 0; i < sheets.length; i++) loss = Math.min(loss, lossAt(sheets[i]!, hz))
  for (let i = 0; i < sheets.length; i++)
    addWavenumber(freeWavenumber2(sheets[i]!, stiffness, omega), loss, leaf, omega)
  if (sheets.length > 1 || leaf.damped.length > 0) addWavenumber(wholeWavenumber2(leaf, tone), loss, leaf, omega)
}

/** Near-equal angles merged into the sharper. */
function mergeAlike(): void {
  const { angle, width } = FOUND
  let kept = 0
  for (let i = 0; i < FOUND.count; i++) {
    const last = kept - 1
    const isSame = last >= 0 && angle[i]! - angle[last]! < SAME_ANGLE * Math.min(width[last]!, width[i]!)
    if (isSame && width[i]! >= width[last]!) continue
    const place = isSame ? last : kept
    angle[place] = angle[i]!
    width[place] = width[i]!
    kept = place + 1
  }
  FOUND.count = kept
}

/** Distinct coincidence angles of all leaves in rising order; valid until the next call. */
export function coincidencesOf(leaves: readonly LeafModel[], tone: Tone): Coincidences {
  FOUND.count = 0
  for (let i = 0; i < leaves.length; i++) addLeaf(leaves[i]!, tone)
  if (FOUND.count > 1) mergeAlike()
  return FOUND
}

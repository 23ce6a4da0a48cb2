import { SOUND_SPEED } from '#acoustics/layered/air.ts'

/** What one solve is for. One object is filled anew for each: passing single numbers would make one for each call. */
export interface Tone {
  hz: number
  /** Angular frequency, rad/s. */
  omega: number
  /** Factor on every Young's modulus; 1 = nominal. */
  stiffness: number
  /** Wavenumber in air, 1/m, and its square. */
  k: number
  k2: number
}

export function setTone(tone: Tone, hz: number, stiffness: number): void {
  tone.hz = hz
  tone.omega = 2 * Math.PI * hz
  tone.stiffness = stiffness
  tone.k = tone.omega / SOUND_SPEED
  tone.k2 = tone.k * tone.k
}

export function newTone(): Tone {
  const tone = { hz: 0.5, omega: 0.5, stiffness: 0.5, k: 0.5, k2: 0.5 }
  setTone(tone, 1000, 1)
  return tone
}

import { randomFrom, whiteNoise } from '#acoustics/listen/random.ts'
import type { Hertz } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

/** What can be played. Its levels come from elsewhere: a voice is a rhythm with something in every octave. */
export type Voice = 'kit' | 'bass' | 'speech' | 'steady'
export const VOICES: readonly Voice[] = ['kit', 'bass', 'speech', 'steady']

/** A sound at one moment of its life, `seconds` after it began. */
type Stroke = (seconds: number) => number

/** Eighth notes in a loop: two bars. */
const EIGHTHS = 16
const KICK_ON = [0, 5, 8, 11, 12]
const SNARE_ON = [2, 6, 10, 14]
/** Bass notes by eighth, Hz: an invented line on four low notes. */
const BASS_HZ: readonly (Hertz | null)[] = [
  55,
  null,
  55,
  65.4,
  null,
  73.4,
  55,
  null,
  55,
  null,
  82.4,
  73.4,
  null,
  65.4,
  55,
  null,
]
/** Longest life of a stroke, s. */
const STROKE_S = 1.2

/** Adds a stroke to a loop from a moment on; what runs past its end comes in at the beginning. */
function strike(loop: Float64Array, sampleRateHz: Hertz, atShare: number, stroke: Stroke): void {
  const from = Math.round(atShare * loop.length)
  const samples = Math.min(loop.length, Math.round(STROKE_S * sampleRateHz))
  for (let i = 0; i < samples; i += 1) {
    const place = (from + i) % loop.length
    loop[place] = loop[place]! + stroke(i / sampleRateHz)
  }
}

/** A low drum: a tone that falls from 140 to 50 Hz, and the click of the beater. */
function kick(noise: () => number): Stroke {
  const glide = 0.03
  return (t) => {
    const turns = 50 * t + 90 * glide * (1 - Math.exp(-t / glide))
    return Math.sin(2 * Math.PI * turns) * Math.exp(-t / 0.18) + 0.3 * noise() * Math.exp(-t / 0.004)
  }
}

function snare(noise: () => number): Stroke {
  return (t) => 0.5 * Math.sin(2 * Math.PI * 185 * t) * Math.exp(-t / 0.06) + 0.6 * noise() * Math.exp(-t / 0.1)
}

/** Bright noise: each number less the one before. */
function hat(noise: () => number): Stroke {
  let before = 0
  return (t) => {
    const now = noise()
    const bright = now - before
    before = now
    return 0.25 * bright * Math.exp(-t / 0.035)
  }
}

function kitPattern(loop: Float64Array, sampleRateHz: Hertz, noise: () => number): void {
  for (const eighth of KICK_ON) strike(loop, sampleRateHz, eighth / EIGHTHS, kick(noise))
  for (const eighth of SNARE_ON) strike(loop, sampleRateHz, eighth / EIGHTHS, snare(noise))
  for (let eighth = 0; eighth < EIGHTHS; eighth += 1) strike(loop, sampleRateHz, eighth / EIGHTHS, hat(noise))
}

/** Overtones of a bass string that are heard. */
const OVERTONES = Array.from({ length: 60 }, (_, i) => i + 1)

/** Weaker than this an overtone is not counted any more. */
const DEAD = 1e-4

/** A plucked string whose overtones die the sooner the higher they are, and the finger on it. */
function pluck(hz: Hertz, noise: () => number): Stroke {
  return (t) => {
    let string = 0
    for (const n of OVERTONES) {
      const strength = Math.exp(-t * (2 + 0.6 * n)) / n
      if (strength < DEAD) break
      string += Math.sin(2 * Math.PI * n * hz * t) * strength
    }
    return string * (1 - Math.exp(-t / 0.004)) + 0.1 * noise() * Math.exp(-t / 0.01)
  }
}

function bassLine(loop: Float64Array, sampleRateHz: Hertz, noise: () => number): void {
  for (const [eighth, hz] of BASS_HZ.entries()) {
    if (hz !== null) strike(loop, sampleRateHz, eighth / EIGHTHS, pluck(hz, noise))
  }
}

/** Syllables in a loop; every fifth is a breath. @source speech runs at about four syllables a second, memory */
const SYLLABLES = 22
const BREATH_EVERY = 5
/** What is left between syllables. */
const LEAST = 0.05

/** Noise that swells and falls as talk does. */
function syllables(loop: Float64Array, seed: number): void {
  const next = randomFrom(seed)
  const strengths = Array.from({ length: SYLLABLES }, (_, i) => (i % BREATH_EVERY === 4 ? 0 : 0.4 + 0.6 * next()))
  const noise = whiteNoise(loop.length, seed + 1)
  for (let i = 0; i < loop.length; i += 1) {
    const place = (i / loop.length) * SYLLABLES
    const swell = Math.sin(Math.PI * (place % 1)) ** 2
    loop[i] = noise[i]! * (LEAST + strengths[Math.floor(place)]! * swell)
  }
}

/**
 * A voice as a loop that ends where it begins; its loudness and balance mean nothing yet.
 * @param samples  a power of two
 * @param seed  the same one gives the same loop
 */
export function voiceLoop(voice: Voice, samples: number, sampleRateHz: Hertz, seed: number): Float64Array {
  const loop = new Float64Array(samples)
  const next = randomFrom(seed)
  const noise = () => 2 * next() - 1
  switch (voice) {
    case 'kit':
      kitPattern(loop, sampleRateHz, noise)
      return loop
    case 'bass':
      bassLine(loop, sampleRateHz, noise)
      return loop
    case 'speech':
      syllables(loop, seed)
      return loop
    case 'steady':
      return whiteNoise(samples, seed)
    default:
      return unreachable(voice)
  }
}

import { ncCurve } from '#acoustics/criteria.ts'
import {
  LOOP_SAMPLES,
  onScale,
  type Playable,
  playable,
  SAMPLE_RATE_HZ,
  TALK_DB,
} from '#acoustics/listen/calibration.ts'
import { shapeOctaves } from '#acoustics/listen/octaveBands.ts'
import { type Voice, voiceLoop } from '#acoustics/listen/voices.ts'
import type { Decibels } from '#units/quantity.ts'

/** What there is to hear. */
export type Listening =
  /** Talk one metre away, to set the volume by. */
  | { readonly kind: 'talk' }
  /** A voice at these levels, with nothing else. */
  | { readonly kind: 'voice'; readonly voice: Voice; readonly levelsDb: readonly (Decibels | null)[] }
  /** The same against the background of a quiet room with that NC. */
  | {
      readonly kind: 'voice-and-background'
      readonly voice: Voice
      readonly levelsDb: readonly (Decibels | null)[]
      readonly backgroundNc: number
    }
  | { readonly kind: 'background'; readonly backgroundNc: number }

/** Seeds: any numbers, as long as voice and background differ. */
const VOICE_SEED = 5
const BACKGROUND_SEED = 71

function voiceAt(voice: Voice, levelsDb: readonly (Decibels | null)[]): Float64Array {
  const dry = voiceLoop(voice, LOOP_SAMPLES, SAMPLE_RATE_HZ, VOICE_SEED)
  return shapeOctaves(dry, SAMPLE_RATE_HZ, onScale(levelsDb))
}

function backgroundAt(index: number): Float64Array {
  const noise = voiceLoop('steady', LOOP_SAMPLES, SAMPLE_RATE_HZ, BACKGROUND_SEED)
  return shapeOctaves(noise, SAMPLE_RATE_HZ, onScale(ncCurve(index)))
}

function loopOf(listening: Listening): Float64Array {
  switch (listening.kind) {
    case 'talk':
      return voiceAt('steady', TALK_DB)
    case 'voice':
      return voiceAt(listening.voice, listening.levelsDb)
    case 'background':
      return backgroundAt(listening.backgroundNc)
    case 'voice-and-background': {
      const background = backgroundAt(listening.backgroundNc)
      return voiceAt(listening.voice, listening.levelsDb).map((value, i) => value + background[i]!)
    }
  }
}

/** A loop of about five seconds at the stated calibration, turned down by whole dB where it could not be played safely. */
export function listenTo(listening: Listening): Playable {
  return playable(loopOf(listening))
}

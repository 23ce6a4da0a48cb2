import { SAMPLE_RATE_HZ } from '#acoustics/listen/calibration.ts'

/** Plays one loop at a time, over and over, until it is stopped. */
export interface Player {
  /** Takes the place of what plays. Rejects where the browser lets no sound out. */
  play(samples: Float32Array): Promise<void>
  stop(): void
  /** Stops and gives the machine's sound back. */
  close(): void
}

/** Long enough that starting and stopping make no click, s. */
const RAMP_S = 0.05

/** False where the browser has no Web Audio. */
export function canPlay(): boolean {
  return typeof globalThis.AudioContext === 'function'
}

interface Sounding {
  readonly source: AudioBufferSourceNode
  readonly gain: GainNode
}

function start(context: AudioContext, samples: Float32Array): Sounding {
  const buffer = context.createBuffer(1, samples.length, SAMPLE_RATE_HZ)
  buffer.copyToChannel(Float32Array.from(samples), 0)
  const source = context.createBufferSource()
  source.buffer = buffer
  source.loop = true
  const gain = context.createGain()
  gain.gain.setValueAtTime(0, context.currentTime)
  gain.gain.linearRampToValueAtTime(1, context.currentTime + RAMP_S)
  source.connect(gain).connect(context.destination)
  source.start()
  return { source, gain }
}

function end(context: AudioContext, { source, gain }: Sounding): void {
  gain.gain.cancelScheduledValues(context.currentTime)
  gain.gain.setValueAtTime(gain.gain.value, context.currentTime)
  gain.gain.linearRampToValueAtTime(0, context.currentTime + RAMP_S)
  source.stop(context.currentTime + RAMP_S)
}

/** A player on this machine's sound; to be made in answer to a press, or browsers keep it silent. */
export function createPlayer(): Player {
  const context = new AudioContext()
  let sounding: Sounding | null = null
  const stop = () => {
    if (sounding) end(context, sounding)
    sounding = null
  }
  return {
    play: async (samples) => {
      stop()
      sounding = start(context, samples)
      await context.resume()
    },
    stop,
    close: () => {
      stop()
      void context.close()
    },
  }
}

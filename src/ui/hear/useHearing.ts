import { useCallback, useEffect, useRef, useState } from 'react'
import type { Playable } from '#acoustics/listen/calibration.ts'
import { type Listening, listenTo } from '#acoustics/listen/listening.ts'
import { type Heard, playingWords } from '#ui/hear/hearWords.ts'
import { createPlayer, type Player } from '#ui/hear/player.ts'

const SILENT = 'Nothing is playing.'

export interface Hearing {
  /** null: silence. */
  readonly heard: Heard | null
  /** For everybody, and read aloud. */
  readonly said: string
  /** Starts a sound in the place of what plays; pressed again, it stops. */
  readonly press: (heard: Heard, what: string, listening: Listening) => void
  readonly stop: () => void
}

/**
 * One sound at a time, and what is said of it.
 * @param matter  changes with everything a sound was made from: one that plays stops then
 */
export function useHearing(matter: string): Hearing {
  const player = useRef<Player | null>(null)
  const made = useRef(new Map<string, Playable>())
  const [heard, setHeard] = useState<Heard | null>(null)
  const [said, setSaid] = useState(SILENT)

  const silence = useCallback((words: string) => {
    player.current?.stop()
    setHeard(null)
    setSaid(words)
  }, [])

  useEffect(
    () => () => {
      player.current?.close()
      player.current = null
    },
    [],
  )
  // biome-ignore lint/correctness/useExhaustiveDependencies: the sound was made from what matters, which is not read again
  useEffect(
    () => () => {
      player.current?.stop()
      made.current.clear()
      setHeard((now) => {
        if (now !== null) setSaid('Stopped, because what it was made from has changed.')
        return null
      })
    },
    [matter],
  )

  const press = (next: Heard, what: string, listening: Listening) => {
    if (heard === next) return silence('Stopped.')
    // Going to and fro between two places is the point of it, so the second time there is no wait.
    const key = JSON.stringify(listening)
    const playable = made.current.get(key) ?? listenTo(listening)
    made.current.set(key, playable)
    setHeard(next)
    setSaid(playingWords(what, playable))
    try {
      player.current ??= createPlayer()
      player.current.play(playable.samples).catch((cause: unknown) => silence(refusal(cause)))
    } catch (cause) {
      silence(refusal(cause))
    }
  }
  return { heard, said, press, stop: () => silence(heard === null ? SILENT : 'Stopped.') }
}

function refusal(cause: unknown): string {
  const why = cause instanceof Error && cause.message !== '' ? ` (${cause.message})` : ''
  return `This browser did not let the sound out${why}. Check that it may play sound on this page, then press again.`
}

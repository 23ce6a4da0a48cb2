import type { Listening } from '#acoustics/listen/listening.ts'
import type { Heard } from '#ui/hear/hearWords.ts'
import type { Hearing } from '#ui/hear/useHearing.ts'

interface Props {
  readonly hearing: Hearing
  readonly heard: Heard
  readonly text: string
  /** What plays, as the sentence beside it names it. */
  readonly what: string
  readonly listening: Listening
}

/** Starts a sound; pressed while it plays, stops it. */
export function PlayButton({ hearing, heard, text, what, listening }: Props) {
  return (
    <button
      type="button"
      className="action plain"
      aria-pressed={hearing.heard === heard}
      onClick={() => hearing.press(heard, what, listening)}
    >
      {text}
    </button>
  )
}

import { useId, useState } from 'react'
import { FULL_SCALE_DB, LOUDEST_DBA, TALK_DBA } from '#acoustics/listen/calibration.ts'
import { VOICES, type Voice } from '#acoustics/listen/voices.ts'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import type { Source } from '#analysis/target.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import {
  backgroundWords,
  levelsWords,
  silentWords,
  sourcePlace,
  usualVoice,
  VOICE_WORDS,
  whyNotHeard,
} from '#ui/hear/hearWords.ts'
import { PlayButton } from '#ui/hear/PlayButton.tsx'
import { canPlay } from '#ui/hear/player.ts'
import { type Hearing, useHearing } from '#ui/hear/useHearing.ts'
import { useKeepsKeyboard } from '#ui/useKeepsKeyboard.ts'
import { fixed } from '#units/format.ts'

interface Props {
  readonly answer: ReceiverAnswer
  readonly source: Source | null
  readonly backgroundNc: number
}

/** What a receiver hears, as sound: made by code, played only on a press. */
export function HearIt(props: Props) {
  const title = useId()
  const place = useKeepsKeyboard<HTMLElement>()
  const why = canPlay() ? whyNotHeard(props.answer, props.source) : NO_SOUND
  return (
    <section ref={place} tabIndex={-1} className="hear" aria-labelledby={title}>
      <h3 id={title}>Hear it</h3>
      {why === null ? <Hear {...props} /> : <p className="bench-said">{why}</p>}
    </section>
  )
}

const NO_SOUND = 'This browser cannot make sound from numbers (it has no Web Audio), so nothing can be played here.'

function Hear({ answer, source, backgroundNc }: Props) {
  const [isLow, setLow] = useState(false)
  const matter = [answer.receiverId, backgroundNc, ...answer.sourceDb, ...answer.levelsDb].join(' ')
  const hearing = useHearing(matter)
  const silent = silentWords(answer)
  return (
    <>
      <p className="hear-caution">
        <span className="warn-sign" aria-hidden="true" />
        Before the first sound: turn the volume of this machine right down, and keep headphones off your ears until you
        know how loud it is. Sound that is too loud harms hearing for good, through headphones before it seems loud.
      </p>
      {isLow ? (
        <>
          <SetVolume hearing={hearing} />
          <Listen answer={answer} source={source} backgroundNc={backgroundNc} hearing={hearing} />
        </>
      ) : (
        <button type="button" className="action plain" onClick={() => setLow(true)}>
          The volume is down: go on
        </button>
      )}
      <ul className="bench-notes">
        <li>{levelsWords(answer, source, backgroundNc)}</li>
        {silent !== null && <li>{silent}</li>}
        <li>
          Only the octaves from 63 to 4000 Hz play. Small loudspeakers have no bass, a phone's or a laptop's hardly any
          below 200 Hz (common practice, no source): the part that comes through walls most is then missing.
        </li>
        <li>Sound that travels through the structure is not in it, nor is bass below 50 Hz.</li>
      </ul>
    </>
  )
}

/** The one thing that makes the levels mean something. */
function SetVolume({ hearing }: { readonly hearing: Hearing }) {
  return (
    <div className="hear-step">
      <h4>Set the volume</h4>
      <p className="bench-said">
        Play this noise and turn the volume up until it is as loud as somebody talking normally one metre away (
        {fixed(TALK_DBA, 0)} dBA), then leave the volume alone. Everything else is then as loud as calculated: full
        scale, a root mean square of 1, stands for {FULL_SCALE_DB} dB. What would be louder than {LOUDEST_DBA} dBA, or
        clip, is turned down, and by how much is said.
      </p>
      <PlayButton
        hearing={hearing}
        heard="talk"
        text="Play noise as loud as talk"
        what="noise as loud as somebody talking one metre away"
        listening={{ kind: 'talk' }}
      />
    </div>
  )
}

function Listen({ answer, source, backgroundNc, hearing }: Props & { readonly hearing: Hearing }) {
  const [chosen, setChosen] = useState<Voice | null>(null)
  const voice = chosen ?? usualVoice(source)
  const place = sourcePlace(source)
  const name = VOICE_WORDS[voice].toLowerCase()
  const background = backgroundWords(backgroundNc)
  const choose = (next: Voice) => {
    setChosen(next)
    hearing.stop()
  }
  return (
    <div className="hear-step">
      <h4>Listen</h4>
      <ChoiceField
        name="hear-voice"
        label="What plays"
        value={voice}
        options={VOICES.map((value) => ({ value, text: VOICE_WORDS[value] }))}
        hint={`Made by code, no recording: its levels are those of ${source?.name ?? 'the source'}.`}
        onChoose={choose}
      />
      <div className="hear-plays">
        <PlayButton
          hearing={hearing}
          heard="source"
          text={`Play ${place}`}
          what={`${name} ${place}`}
          listening={{ kind: 'voice', voice, levelsDb: answer.sourceDb }}
        />
        <PlayButton
          hearing={hearing}
          heard="receiver"
          text={`Play at ${answer.name}`}
          what={`${name} at ${answer.name} against ${background}`}
          listening={{ kind: 'voice-and-background', voice, levelsDb: answer.levelsDb, backgroundNc }}
        />
        <PlayButton
          hearing={hearing}
          heard="background"
          text="Play the background alone"
          what={`the background alone, ${background}`}
          listening={{ kind: 'background', backgroundNc }}
        />
        <button type="button" className="action plain" onClick={hearing.stop}>
          Stop
        </button>
      </div>
      <p className="bench-said hear-said" role="status">
        {hearing.said}
      </p>
    </div>
  )
}

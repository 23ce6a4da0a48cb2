import { USUAL_REVERBERATION_S } from '#analysis/paths/absorption.ts'
import { setReverberation } from '#state/commands/air.ts'
import { REVERBERATION_PRESETS } from '#state/usualAir.ts'
import { NumberField } from '#ui/fields/NumberField.tsx'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useRoom } from '#ui/session.ts'

/** How long sound rings in the finished room: it decides how loud noise from outside becomes in it. */
export function ReverberationPart() {
  const room = useRoom()
  const run = useRun()
  const kept = useKept()
  return (
    <section className="air-part" aria-label="The finished room">
      <h3>How the finished room rings</h3>
      <div className="field-row">
        <NumberField
          name="reverberation"
          label="Reverberation time"
          unit="s"
          what="A reverberation time"
          example={0.4}
          step={0.05}
          value={room.reverberationS ?? null}
          canBeEmpty
          hint={`Empty: ${USUAL_REVERBERATION_S} s, own choice. Used for noise that comes in, and for talkers.`}
          onCommit={(seconds) => run(setReverberation(room.id, seconds))}
          kept={kept(`${room.id}-reverberation`)}
        />
        <fieldset className="air-presets">
          <legend className="field-label">Common practice, no source</legend>
          {REVERBERATION_PRESETS.map(({ name, seconds }) => (
            <button
              key={name}
              type="button"
              className="row-button"
              aria-pressed={room.reverberationS === seconds}
              onClick={() => run(setReverberation(room.id, seconds))}
            >
              {name}, {seconds} s
            </button>
          ))}
        </fieldset>
      </div>
    </section>
  )
}

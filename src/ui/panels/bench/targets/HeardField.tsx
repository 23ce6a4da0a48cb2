import { SOURCE_PRESETS, sourcePreset } from '#analysis/presets.ts'
import type { LevelPlace, Receiver } from '#analysis/target.ts'
import { changeReceiver, hearSource } from '#state/commands/targets.ts'
import { sourceOf } from '#state/usualTargets.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { presetOption } from '#ui/panels/bench/targets/targetWords.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useShownProject } from '#ui/session.ts'

const NOTHING = 'nothing'
const PRESET = 'preset:'

/** What a receiver hears: one of the project's sources, or one of the list, which is then added. */
export function HeardField({ receiver }: { readonly receiver: Receiver }) {
  const run = useRun()
  const { sources } = useShownProject()
  const { id, source, place } = receiver
  const here = new Set(sources.map(({ preset }) => preset))
  const others = SOURCE_PRESETS.filter((preset) => !here.has(preset.key) && canBeHeard(preset.place, place.kind))
  const choose = (value: string) => {
    const preset = value.startsWith(PRESET) ? sourcePreset(value.slice(PRESET.length)) : null
    if (preset) return run(hearSource(id, sourceOf(preset)))
    return run(changeReceiver(id, { source: value === NOTHING ? null : value }))
  }
  return (
    <ChoiceField<string>
      name={`${id}-source`}
      label={place.kind === 'this-room' ? 'What comes in' : 'What is played'}
      value={source ?? NOTHING}
      options={[
        ...(source === null ? [{ value: NOTHING, text: 'Nothing chosen yet' }] : []),
        ...sources.map(({ id: value, name }) => ({ value, text: name })),
        ...others.map((preset) => ({ value: `${PRESET}${preset.key}`, text: `Add: ${presetOption(preset)}` })),
      ]}
      onChoose={choose}
    />
  )
}

/** What is loud at the wall outside comes in; everything else goes out, or comes from the room beside. */
function canBeHeard(level: LevelPlace, kind: Receiver['place']['kind']): boolean {
  return kind === 'this-room' ? level !== 'one-metre' : level !== 'facade'
}

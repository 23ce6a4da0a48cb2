import { useId } from 'react'
import { SOURCE_PRESETS, type SourceGroup } from '#analysis/presets.ts'
import { FieldFrame } from '#ui/fields/FieldFrame.tsx'
import { presetOption } from '#ui/panels/bench/targets/targetWords.ts'

interface Props {
  /** Key of the preset. */
  readonly value: string
  readonly hint: string | null
  readonly error: string | null
  readonly onChoose: (key: string) => void
}

const GROUPS: readonly { readonly group: SourceGroup; readonly label: string }[] = [
  { group: 'music', label: 'Music' },
  { group: 'speech', label: 'Speech' },
  { group: 'outdoors', label: 'Coming in from outdoors' },
]

/** Sources to begin with, in groups, each with its level and what that rests on. */
export function PresetField({ value, hint, error, onChoose }: Props) {
  const id = useId()
  return (
    <FieldFrame id={id} name="source-preset" label="A source from the list" hint={hint} error={error}>
      <select
        id={id}
        name="source-preset"
        className="field-input"
        value={value}
        aria-describedby={`${id}-says`}
        onChange={(event) => onChoose(event.target.value)}
      >
        {GROUPS.map(({ group, label }) => (
          <optgroup key={group} label={label}>
            {SOURCE_PRESETS.filter((preset) => preset.group === group).map((preset) => (
              <option key={preset.key} value={preset.key}>
                {presetOption(preset)}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </FieldFrame>
  )
}

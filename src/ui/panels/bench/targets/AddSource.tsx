import { useState } from 'react'
import { SOURCE_PRESETS, sourcePreset } from '#analysis/presets.ts'
import { addSource } from '#state/commands/targets.ts'
import { sourceOf, typedSource } from '#state/usualTargets.ts'
import { PresetField } from '#ui/panels/bench/targets/PresetField.tsx'
import { presetWords } from '#ui/panels/bench/targets/targetWords.ts'
import { useAdding } from '#ui/panels/bench/targets/useTargets.ts'

interface Props {
  readonly onAdded: (id: string) => void
}

/** Adds a source: one of the list, which says what it rests on before it is taken, or one whose levels are typed. */
export function AddSource({ onAdded }: Props) {
  const [key, setKey] = useState(SOURCE_PRESETS[0]?.key ?? '')
  const [refused, setRefused] = useState<string | null>(null)
  const add = useAdding('sources', onAdded)
  const preset = sourcePreset(key)
  return (
    <div className="add-target">
      <PresetField value={key} hint={preset === null ? null : presetWords(preset)} error={refused} onChoose={setKey} />
      <fieldset className="table-verbs" aria-label="Add a source">
        <button
          type="button"
          className="row-button"
          disabled={preset === null}
          onClick={() => setRefused(preset && add(addSource(sourceOf(preset))))}
        >
          Add it
        </button>
        <button
          type="button"
          className="row-button"
          onClick={() => setRefused(add(addSource(typedSource('Measured source'))))}
        >
          Type levels of my own
        </button>
      </fieldset>
    </div>
  )
}

import type { Hole } from '#analysis/scheme.ts'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { NumberField } from '#ui/fields/NumberField.tsx'
import { TextField } from '#ui/fields/TextField.tsx'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { useShownProject } from '#ui/session.ts'

interface Props {
  /** Begins the names of its fields. */
  readonly name: string
  /** The surface it goes through. */
  readonly of: string
  readonly hole: Hole
  /** What it does at 500 Hz. */
  readonly caps: string
  readonly onChange: (patch: Partial<Hole>) => string | null
  readonly onDelete: () => void
}

/** Holes of one name in a surface. */
export function HoleFields({ name, of, hole, caps, onChange, onDelete }: Props) {
  const { units } = useShownProject()
  const kept = useKept()
  return (
    <div className="row-fields">
      <TextField
        name={`${name}-name`}
        label="Hole"
        value={hole.name}
        onCommit={(text) => onChange({ name: text.trim() })}
      />
      <LengthField
        name={`${name}-diameter`}
        label="Diameter"
        of={`${hole.name} in ${of}`}
        compact
        value={hole.diameterMm}
        unit={units}
        leastMm={0}
        moreThanLeast
        onCommit={(diameterMm) => onChange({ diameterMm })}
        kept={kept(`${name}-diameter`)}
      />
      <NumberField
        name={`${name}-count`}
        label="How many"
        of={`${hole.name} in ${of}`}
        compact
        unit=""
        what="How many there are"
        example={2}
        value={hole.count}
        onCommit={(count) => (count === null ? null : onChange({ count }))}
        kept={kept(`${name}-count`)}
      />
      <span className="bench-said">
        Caps {of} at 500 Hz {caps}.
      </span>
      <button type="button" className="row-button" onClick={onDelete}>
        Delete
        <span className="visually-hidden">
          {' '}
          {hole.name} in {of}
        </span>
      </button>
    </div>
  )
}

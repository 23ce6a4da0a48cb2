import { OCTAVE_KEYS } from '#acoustics/bands.ts'
import type { Duct, DuctMade, Silencer } from '#analysis/room.ts'
import { SILENCER_PRESETS } from '#state/usualAir.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { NumberField } from '#ui/fields/NumberField.tsx'
import { TextField } from '#ui/fields/TextField.tsx'
import { OctaveFields } from '#ui/panels/bench/targets/OctaveFields.tsx'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { useShownProject } from '#ui/session.ts'

interface Props {
  /** Begins the names of its fields. */
  readonly name: string
  readonly legend: string
  readonly duct: Duct
  readonly made: DuctMade
  /** A sentence when it was refused, null when it was taken. */
  readonly onChange: (made: DuctMade) => string | null
}

/** What is done to a duct against the sound in it: lining, bends, a silencer. */
export function DuctMadeFields({ name, legend, duct, made, onChange }: Props) {
  const { units } = useShownProject()
  const kept = useKept()
  const change = (patch: Partial<DuctMade>) => onChange({ ...made, ...patch })
  const field = (key: string) => ({
    name: `${name}-${key}`,
    of: `${duct.name}, ${legend}`,
    kept: kept(`${name}-${key}`),
  })
  return (
    <fieldset className="air-fields">
      <legend>{legend}</legend>
      <LengthField
        {...field('lining')}
        label="Lining on all sides"
        value={made.liningMm}
        unit={units}
        leastMm={0}
        onCommit={(liningMm) => change({ liningMm, linedLengthMm: linedWith(liningMm, duct, made) })}
      />
      <LengthField
        {...field('lined-length')}
        label="Lined over"
        value={made.linedLengthMm}
        unit={units}
        leastMm={0}
        onCommit={(linedLengthMm) => change({ linedLengthMm })}
      />
      <NumberField
        {...field('bends')}
        label="Right-angled bends"
        unit=""
        what="The number of bends"
        example={2}
        value={made.bends}
        onCommit={(bends) => (bends === null ? null : change({ bends }))}
      />
      <SilencerFields name={name} of={`${duct.name}, ${legend}`} silencer={made.silencer} change={change} />
    </fieldset>
  )
}

/** A lining that comes new goes all along until its length is typed. */
function linedWith(liningMm: number, duct: Duct, made: DuctMade): number {
  return liningMm > 0 && made.liningMm === 0 && made.linedLengthMm === 0 ? duct.lengthMm : made.linedLengthMm
}

const TYPED: Silencer = {
  name: 'Silencer',
  insertionLossDb: { 63: null, 125: null, 250: null, 500: null, 1000: null, 2000: null, 4000: null },
}

interface SilencerProps {
  readonly name: string
  readonly of: string
  readonly silencer: Silencer | null
  readonly change: (patch: Pick<DuctMade, 'silencer'>) => string | null
}

function SilencerFields({ name, of, silencer, change }: SilencerProps) {
  const preset = SILENCER_PRESETS.find((candidate) => silencer && isSame(candidate, silencer))
  const choose = (chosen: string) => {
    const picked = SILENCER_PRESETS.find((candidate) => candidate.name === chosen)
    if (picked) return change({ silencer: { name: picked.name, insertionLossDb: picked.insertionLossDb } })
    return change({ silencer: chosen === 'typed' ? (silencer ?? TYPED) : null })
  }
  return (
    <>
      <ChoiceField
        name={`${name}-silencer`}
        label="Silencer"
        of={of}
        value={silencer === null ? 'none' : (preset?.name ?? 'typed')}
        options={[
          { value: 'none', text: 'None' },
          ...SILENCER_PRESETS.map((candidate) => ({ value: candidate.name, text: candidate.name })),
          { value: 'typed', text: 'Typed by octave' },
        ]}
        hint={preset ? `${preset.source}.` : null}
        onChoose={choose}
      />
      {silencer && (
        <TextField
          name={`${name}-silencer-name`}
          label="What it is called"
          value={silencer.name}
          onCommit={(text) => change({ silencer: { ...silencer, name: text.trim() } })}
        />
      )}
      {silencer && (
        <OctaveFields
          name={`${name}-insertion`}
          legend={`Insertion loss by octave, dB, ${of}`}
          what="an insertion loss"
          example={15}
          values={silencer.insertionLossDb}
          onCommit={(insertionLossDb) => change({ silencer: { ...silencer, insertionLossDb } })}
        />
      )}
    </>
  )
}

function isSame(one: Silencer, other: Silencer): boolean {
  return one.name === other.name && OCTAVE_KEYS.every((key) => one.insertionLossDb[key] === other.insertionLossDb[key])
}

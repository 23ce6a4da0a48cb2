import { LIMIT_PRESETS, limitPreset } from '#analysis/presets.ts'
import type { Limit } from '#analysis/target.ts'
import { CheckField } from '#ui/fields/CheckField.tsx'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { NumberField } from '#ui/fields/NumberField.tsx'
import type { ReceiverProps } from '#ui/panels/bench/targets/ReceiverForm.tsx'
import { limitOption, limitOrigin } from '#ui/panels/bench/targets/targetWords.ts'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'

const TYPED = 'typed'
const KINDS: readonly { readonly value: Limit['kind']; readonly text: string }[] = [
  { value: 'NC', text: 'NC curve' },
  { value: 'NR', text: 'NR curve' },
  { value: 'dBA', text: 'dBA, A-weighted' },
  { value: 'dBC', text: 'dBC, C-weighted' },
]

/** The limit: from a list with its source, or typed; what a beat takes off it, and what else is heard there. */
export function LimitFields({ receiver, change }: ReceiverProps) {
  const { id, limit, place, limitPreset: key } = receiver
  const preset = limitPreset(key)
  const fitting = LIMIT_PRESETS.filter(({ places, key: own }) => places.includes(place.kind) || own === key)
  const choose = (value: string) => {
    const chosen = limitPreset(value)
    return change(chosen ? { limit: chosen.limit, limitPreset: chosen.key } : { limitPreset: null })
  }
  return (
    <>
      <ChoiceField<string>
        name={`${id}-limit-preset`}
        label="Limit from the list"
        value={preset?.key ?? TYPED}
        options={[
          { value: TYPED, text: 'Typed' },
          ...fitting.map((one) => ({ value: one.key, text: limitOption(one) })),
        ]}
        hint={preset === null ? 'Typed by you.' : limitOrigin(preset)}
        onChoose={choose}
      />
      <ChoiceField<Limit['kind']>
        name={`${id}-limit-kind`}
        label="Judged by"
        value={limit.kind}
        options={KINDS}
        onChoose={(kind) => change({ limit: limitOf(kind, limitNumber(limit)) })}
      />
      <LimitValue receiver={receiver} change={change} />
      <CheckField
        name={`${id}-beat`}
        label="A beat or a tone: 5 dB less is allowed"
        isChecked={receiver.hasBeat}
        onCheck={(hasBeat) => change({ hasBeat })}
      />
      <Background receiver={receiver} change={change} />
    </>
  )
}

function LimitValue({ receiver: { id, limit }, change }: ReceiverProps) {
  const kept = useKept()
  const isCurve = 'index' in limit
  return (
    <NumberField
      name={`${id}-limit`}
      label={isCurve ? `No louder than ${limit.kind}` : `No louder than, ${limit.kind}`}
      unit={isCurve ? '' : limit.kind}
      what="The limit"
      example={isCurve ? 25 : 35}
      value={limitNumber(limit)}
      onCommit={(value) => (value === null ? null : change({ limit: limitOf(limit.kind, value) }))}
      kept={kept(`${id}-limit`)}
    />
  )
}

function Background({ receiver: { id, backgroundNc }, change }: ReceiverProps) {
  const kept = useKept()
  return (
    <NumberField
      name={`${id}-background`}
      label="Also heard there, NC"
      unit=""
      what="The background"
      example={20}
      value={backgroundNc}
      hint="Beside it in Hear it; no part of the limit."
      onCommit={(value) => (value === null ? null : change({ backgroundNc: value }))}
      kept={kept(`${id}-background`)}
    />
  )
}

function limitNumber(limit: Limit): number {
  return 'index' in limit ? limit.index : limit.levelDb
}

function limitOf(kind: Limit['kind'], value: number): Limit {
  return kind === 'NC' || kind === 'NR' ? { kind, index: value } : { kind, levelDb: value }
}

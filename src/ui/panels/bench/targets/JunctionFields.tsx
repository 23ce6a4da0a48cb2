import { JUNCTIONS, type Junction, junctionOf } from '#analysis/paths/flanking/junctions.ts'
import type { JunctionClass, Receiver } from '#analysis/target.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import type { ReceiverProps } from '#ui/panels/bench/targets/ReceiverForm.tsx'

const LINED_BEYOND: readonly { readonly value: Receiver['linedBeyond']; readonly text: string }[] = [
  { value: 'none', text: 'Nothing' },
  { value: 'shared', text: 'The shared wall only' },
  { value: 'all', text: 'All its surfaces' },
]

/** How the building goes on from the room to the receiver, with what that takes for granted. */
export function JunctionFields({ receiver, change }: ReceiverProps) {
  const { id, junction, linedBeyond } = receiver
  const chosen = junctionOf(junction)
  return (
    <>
      <ChoiceField<JunctionClass>
        name={`${id}-junction`}
        label="From here to there"
        value={junction}
        options={JUNCTIONS.map((one) => ({ value: one.id, text: `${one.name}: ${ruleWords(one)}` }))}
        hint={`${chosen.means} ${assumptionWords(chosen)}`}
        onChoose={(now) => change({ junction: now })}
      />
      <ChoiceField<Receiver['linedBeyond']>
        name={`${id}-lined-beyond`}
        label="Lined on its own side"
        value={linedBeyond}
        options={LINED_BEYOND}
        hint="Linings on the shared wall alone leave side walls and floor talking."
        onChoose={(now) => change({ linedBeyond: now })}
      />
    </>
  )
}

function ruleWords({ rule }: Junction): string {
  switch (rule.kind) {
    case 'none':
      return 'no claim'
    case 'allowance':
      return `${rule.allowanceDb} dB weaker than a laboratory`
    default:
      return `goes round at STC ${rule.limitStc}`
  }
}

/** What stands behind the number: never left out, for none of these is calculated. */
function assumptionWords({ rule, source, status }: Junction): string {
  return rule.kind === 'none' ? '' : `An assumption: ${source}. Status: ${status}.`
}

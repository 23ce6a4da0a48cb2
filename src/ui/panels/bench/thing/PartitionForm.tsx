import type { Partition, Placement } from '#project/project.ts'
import { changePartition } from '#state/commands/partitions.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import {
  PLACEMENTS,
  partitionConstructions,
  partitionDepth,
  sidesWords,
} from '#ui/panels/bench/rooms/partitionWords.ts'
import { Facts, NameField, ThingForm } from '#ui/panels/bench/thing/parts.tsx'
import { CUT_CAUTION } from '#ui/panels/bench/thing/thingCautions.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { bothHeights } from '#ui/panels/ledger/heightRows.ts'
import { useCatalogue, useShownProject } from '#ui/session.ts'

/** A new wall between two rooms: what it is built of and where its thickness lies. */
export function PartitionForm({ partition }: { readonly partition: Partition }) {
  const project = useShownProject()
  const catalogue = useCatalogue()
  const run = useRun()
  const { id, name } = partition
  const beside = (
    <Facts
      title="In the plan"
      rows={[
        ['Stands between', sidesWords(project, partition)],
        ['Thick, without linings', bothHeights(partitionDepth(catalogue, partition), project.units)],
      ]}
      problems={[]}
      caution={CUT_CAUTION}
    />
  )
  return (
    <ThingForm name={name} beside={beside}>
      <NameField id={id} value={name} command={(text) => changePartition(id, { name: text })} />
      <ChoiceField
        name={`${id}-construction`}
        label="Built of"
        value={partition.construction}
        options={partitionConstructions(catalogue)}
        onChoose={(construction) => run(changePartition(id, { construction }))}
      />
      <ChoiceField<Placement>
        name={`${id}-placement`}
        label="Its thickness lies"
        value={partition.placement}
        options={PLACEMENTS}
        onChoose={(placement) => run(changePartition(id, { placement }))}
      />
    </ThingForm>
  )
}

import type { Partition, Placement } from '#project/project.ts'
import { changePartition, joinRooms } from '#state/commands/partitions.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { TextField } from '#ui/fields/TextField.tsx'
import {
  PLACEMENTS,
  partitionConstructions,
  partitionDepth,
  sidesWords,
} from '#ui/panels/bench/rooms/partitionWords.ts'
import { Heads } from '#ui/panels/bench/tables/rows.tsx'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useCatalogue, useSession, useShownProject, useView } from '#ui/session.ts'
import { formatThickness } from '#units/format.ts'

/** New walls between two rooms of the project. */
export function PartitionTable() {
  const { partitions } = useShownProject()
  if (partitions.length === 0) return null
  return (
    <table className="figures cards wide-table">
      <caption>Partitions; linings on either face are chosen in each room, as of any wall</caption>
      <Heads heads={['Partition', 'Name', 'Between', 'Construction', 'Thick', 'Stands']} />
      <tbody>
        {partitions.map((partition, index) => (
          <PartitionRow key={partition.id} partition={partition} number={index + 1} />
        ))}
      </tbody>
    </table>
  )
}

function PartitionRow({ partition, number }: { readonly partition: Partition; readonly number: number }) {
  const project = useShownProject()
  const verbs = useThingVerbs()
  const isPicked = useView(({ thing }) => thing?.kind === 'partition' && thing.id === partition.id)
  return (
    <tr aria-current={isPicked ? 'true' : undefined}>
      <th scope="row">
        <button
          type="button"
          className="row-button"
          onClick={() => verbs.pick({ kind: 'partition', id: partition.id })}
        >
          Partition {number}
        </button>
      </th>
      <PartitionCells partition={partition} />
      <td className="words" data-label="Between">
        {sidesWords(project, partition)}
      </td>
      <PartitionBuild partition={partition} />
      <td data-label="" className="row-verbs">
        <JoinAgain partition={partition} />
      </td>
    </tr>
  )
}

function PartitionCells({ partition }: { readonly partition: Partition }) {
  const run = useRun()
  return (
    <td data-label="Name">
      <TextField
        name={`${partition.id}-name`}
        label={`Name of ${partition.name}`}
        quiet
        value={partition.name}
        onCommit={(name) => run(changePartition(partition.id, { name }))}
      />
    </td>
  )
}

function PartitionBuild({ partition }: { readonly partition: Partition }) {
  const { units } = useShownProject()
  const catalogue = useCatalogue()
  const run = useRun()
  return (
    <>
      <td data-label="Construction">
        <ChoiceField
          name={`${partition.id}-construction`}
          label={`Construction of ${partition.name}`}
          quiet
          value={partition.construction}
          options={partitionConstructions(catalogue)}
          onChoose={(construction) => run(changePartition(partition.id, { construction }))}
        />
      </td>
      <td className="number" data-label="Thick">
        {formatThickness(partitionDepth(catalogue, partition), units)}
      </td>
      <td data-label="Stands">
        <ChoiceField<Placement>
          name={`${partition.id}-placement`}
          label={`Where ${partition.name} stands`}
          quiet
          value={partition.placement}
          options={PLACEMENTS}
          onChoose={(placement) => run(changePartition(partition.id, { placement }))}
        />
      </td>
    </>
  )
}

/** Takes a partition out: its two rooms become one again. */
export function JoinAgain({ partition }: { readonly partition: Partition }) {
  const { document } = useSession()
  return (
    <button type="button" className="row-button" onClick={() => document.run(joinRooms(partition.id))}>
      Join again<span className="visually-hidden"> the rooms beside {partition.name}</span>
    </button>
  )
}

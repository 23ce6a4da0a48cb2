import type { CeilingPart, HeightPoint } from '#analysis/room.ts'
import { addHeight } from '#state/commands/heights.ts'
import { usualHeight } from '#state/usualThings.ts'
import { heightEntries } from '#ui/panels/bench/tables/entries.ts'
import { EntryCells, Heads, TableVerbs, ThingRow } from '#ui/panels/bench/tables/rows.tsx'
import { useFreePlace } from '#ui/panels/bench/tables/useFreePlace.ts'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { useRoom } from '#ui/session.ts'

interface Props {
  /** The part of the ceiling whose heights these are; null: the room's own. */
  readonly part: CeilingPart | null
  readonly heights: readonly HeightPoint[]
}

const HEADS = ['Height point', 'x', 'y', 'Height', 'Floor level']

/** Heights measured at places of the plan. */
export function HeightTable({ part, heights }: Props) {
  const room = useRoom()
  return (
    <>
      <table className="figures cards wide-table">
        <caption>
          {part ? `Heights of ${part.name}` : 'Heights of the ceiling'}; floor level over the datum, negative where it
          falls away
        </caption>
        <Heads heads={HEADS} />
        <tbody>
          {heights.map((point, index) => (
            <ThingRow
              key={point.id}
              thing={{ kind: 'height', id: point.id }}
              name={`Height ${index + 1}${part ? `, ${part.name}` : ''}`}
              columns={HEADS.length + 1}
              says={[]}
              canDelete={heights.length > 1}
            >
              <EntryCells id={point.id} of={`height ${index + 1}`} entries={heightEntries(room, point)} />
            </ThingRow>
          ))}
        </tbody>
      </table>
      <AddHeight part={part} />
    </>
  )
}

function AddHeight({ part }: Pick<Props, 'part'>) {
  const room = useRoom()
  const verbs = useThingVerbs()
  const place = useFreePlace()
  const add = () => {
    const [xMm, yMm] = part ? middleOf(part) : place()
    verbs.add('height', addHeight(room.id, part?.id ?? null, usualHeight(xMm, yMm, room)))
  }
  return (
    <TableVerbs label={part ? `Add to the heights of ${part.name}` : 'Add to the heights'}>
      <button type="button" className="row-button" onClick={add}>
        Add a height{part && ` to ${part.name}`}
      </button>
    </TableVerbs>
  )
}

function middleOf({ corners }: CeilingPart): readonly [number, number] {
  const mean = (of: (corner: CeilingPart['corners'][number]) => number) =>
    corners.reduce((sum, corner) => sum + of(corner), 0) / corners.length
  return [mean(({ xMm }) => xMm), mean(({ yMm }) => yMm)]
}

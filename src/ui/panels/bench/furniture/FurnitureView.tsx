import type { Furniture, FurnitureKind } from '#analysis/room.ts'
import { FURNITURE_KINDS } from '#analysis/room.ts'
import { addFurniture, changeFurniture } from '#state/commands/furniture.ts'
import { usualFurniture } from '#state/usualThings.ts'
import { AngleField } from '#ui/fields/AngleField.tsx'
import { furnitureKindWords } from '#ui/panels/bench/furniture/fitWords.ts'
import { WhatFits } from '#ui/panels/bench/furniture/WhatFits.tsx'
import { furnitureEntries } from '#ui/panels/bench/tables/entries.ts'
import { EntryCells, Heads, NothingYet, TableVerbs, ThingRow } from '#ui/panels/bench/tables/rows.tsx'
import { useFreePlace } from '#ui/panels/bench/tables/useFreePlace.ts'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

const HEADS = [
  'Furniture',
  'x',
  'y',
  'Width',
  'Depth',
  'Height',
  'Turned',
  'Clear front',
  'Clear back',
  'Clear left',
  'Clear right',
  'Fits',
]

/** What the finished room has to hold, and whether it does. */
export function FurnitureView() {
  const room = useRoom()
  return (
    <div className="table-place">
      <AddFurniture />
      <WhatFits />
      {room.furniture.length === 0 ? (
        <NothingYet text="Nothing is placed yet. Add what the room has to hold, with the space its user needs round it." />
      ) : (
        <table className="figures cards wide-table">
          <caption>
            x and y are of the middle; turned counter-clockwise, at 0° the front looks down the page; clear space is
            round the footprint
          </caption>
          <Heads heads={HEADS} />
          <tbody>
            {room.furniture.map((piece) => (
              <FurnitureRow key={piece.id} piece={piece} />
            ))}
          </tbody>
        </table>
      )}
    </div>
  )
}

function FurnitureRow({ piece }: { readonly piece: Furniture }) {
  const room = useRoom()
  const run = useRun()
  const { result } = useLedger()
  const problems = result?.furniture.find(({ id }) => id === piece.id)?.problems ?? []
  const entries = furnitureEntries(room, piece)
  return (
    <ThingRow
      thing={{ kind: 'furniture', id: piece.id }}
      name={piece.name}
      columns={HEADS.length + 1}
      says={problems.map(({ text }) => text)}
    >
      <EntryCells id={piece.id} of={piece.name} entries={entries.slice(0, 5)} />
      <td data-label="Turned">
        <AngleField
          name={`${piece.id}-angle`}
          label={`Turned, ${piece.name}`}
          quiet
          compact
          value={piece.angleDeg}
          onCommit={(angleDeg) => run(changeFurniture(room.id, piece.id, { angleDeg }))}
        />
      </td>
      <EntryCells id={piece.id} of={piece.name} entries={entries.slice(5)} />
      <td data-label="Fits" className="number">
        {problems.length === 0 ? 'yes' : 'no'}
      </td>
    </ThingRow>
  )
}

function AddFurniture() {
  const room = useRoom()
  const { units } = useShownProject()
  const verbs = useThingVerbs()
  const place = useFreePlace()
  const add = (kind: FurnitureKind) => {
    const [x, y] = place()
    verbs.add('furniture', addFurniture(room.id, usualFurniture(kind, x, y, units, room)))
  }
  return (
    <TableVerbs label="Add to the furniture">
      {FURNITURE_KINDS.map((kind) => (
        <button key={kind} type="button" className="row-button" onClick={() => add(kind)}>
          Add {kind === 'other' ? '' : 'a '}
          {furnitureKindWords(kind)}
        </button>
      ))}
    </TableVerbs>
  )
}

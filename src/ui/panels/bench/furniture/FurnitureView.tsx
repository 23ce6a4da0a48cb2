import type { Furniture, FurnitureKind } from '#analysis/room.ts'
import { FURNITURE_KINDS } from '#analysis/room.ts'
import { addFurniture, changeFurniture } from '#state/commands/furniture.ts'
import { usualFurniture } from '#state/usualThings.ts'
import { AngleField } from '#ui/fields/AngleField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { furnitureKindWords } from '#ui/panels/bench/furniture/fitWords.ts'
import { WhatFits } from '#ui/panels/bench/furniture/WhatFits.tsx'
import { furnitureEntries, type LengthEntry } from '#ui/panels/bench/tables/entries.ts'
import { EntryCells, Heads, NothingYet, TableVerbs, ThingRow } from '#ui/panels/bench/tables/rows.tsx'
import { useFreePlace } from '#ui/panels/bench/tables/useFreePlace.ts'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

const HEADS = ['Furniture', 'x', 'y', 'Width', 'Depth', 'Height', 'Turned']

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
          <caption>x and y are of the middle; turned counter-clockwise, at 0° the front looks down the page</caption>
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
      under={<ClearSpace piece={piece} entries={entries.slice(5)} fits={result !== null && problems.length === 0} />}
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
    </ThingRow>
  )
}

interface ClearSpaceProps {
  readonly piece: Furniture
  readonly entries: readonly LengthEntry[]
  readonly fits: boolean
}

/** The space its user needs round a piece, and whether all of it is there. */
function ClearSpace({ piece, entries, fits }: ClearSpaceProps) {
  const { units } = useShownProject()
  const run = useRun()
  return (
    <div className="row-fields">
      {entries.map(({ key, head, label: _, command, ...limits }) => (
        <LengthField
          key={key}
          name={`${piece.id}-${key}`}
          label={head}
          unit={units}
          compact
          onCommit={(value) => run(command(value))}
          {...limits}
        />
      ))}
      {fits && <span className="bench-said">It fits.</span>}
    </div>
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

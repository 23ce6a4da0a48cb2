import { useState } from 'react'
import type { Wall } from '#analysis/room.ts'
import { insertCorner } from '#state/commands/outline.ts'
import { moveWall, setWallLength } from '#state/commands/wall.ts'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { MovingEnd } from '#ui/panels/bench/outline/MovingEnd.tsx'
import { Heads, LengthCell } from '#ui/panels/bench/tables/rows.tsx'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { wallEnds, wallLength } from '#ui/panels/bench/wallLength.ts'
import { useRoom, useSession, useShownProject, useView } from '#ui/session.ts'
import { formatLength } from '#units/format.ts'

const HEADS = ['Wall', 'Runs', 'Length', 'Move inward by', 'Corner at']

/** Every wall: its length, moved parallel, split by a corner. */
export function WallTable() {
  const room = useRoom()
  return (
    <div className="outline-walls">
      <MovingEnd />
      <table className="figures cards">
        <caption>Walls; inward is into the room, a negative distance goes outward</caption>
        <Heads heads={HEADS} />
        <tbody>
          {room.walls.map((wall, index) => (
            <WallRow key={wall.id} wall={wall} number={index + 1} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function WallRow({ wall, number }: { readonly wall: Wall; readonly number: number }) {
  const room = useRoom()
  const { view } = useSession()
  const run = useRun()
  const movingEnd = useView((state) => state.movingEnd)
  const [first, second] = wallEnds(room, wall.id)
  return (
    <tr>
      <th scope="row">
        <button
          type="button"
          className="row-button"
          onClick={() => view.setState({ surfaceIds: [wall.id], cornerId: null, thing: null })}
        >
          Wall {number}
        </button>
      </th>
      <td className="number" data-label="Runs">
        {first} to {second}
      </td>
      <LengthCell
        head="Length"
        name={`wall-length-${number}`}
        label={`Length of wall ${number}`}
        value={wallLength(room, wall.id)}
        leastMm={0}
        moreThanLeast
        onCommit={(length) => run(setWallLength(room.id, wall.id, length, movingEnd))}
      />
      <LengthCell
        head="Move inward by"
        name={`wall-move-${number}`}
        label={`Move wall ${number} parallel, inward by`}
        value={0}
        onCommit={(inward) => run(moveWall(room.id, wall.id, inward))}
      />
      <InsertCorner wall={wall} number={number} />
    </tr>
  )
}

/** A new corner at a typed distance from the wall's start; in its middle until somebody types. */
function InsertCorner({ wall, number }: { readonly wall: Wall; readonly number: number }) {
  const room = useRoom()
  const { units } = useShownProject()
  const { document } = useSession()
  const [typed, setTyped] = useState<number | null>(null)
  const length = wallLength(room, wall.id)
  const along = typed ?? length / 2
  const insert = () => {
    if (document.run(insertCorner(room.id, wall.id, along)).ok) setTyped(null)
  }
  return (
    <>
      <td data-label="Corner at">
        <LengthField
          name={`corner-at-${number}`}
          label={`New corner in wall ${number}, from its start`}
          quiet
          compact
          value={along}
          unit={units}
          leastMm={0}
          moreThanLeast
          onCommit={(at) => {
            if (at >= length) return `Wall ${number} is ${formatLength(length, units)} long; type less than that.`
            setTyped(at)
            return null
          }}
        />
      </td>
      <td data-label="" className="row-verbs">
        <button type="button" className="row-button" onClick={insert}>
          Insert corner<span className="visually-hidden"> in wall {number}</span>
        </button>
      </td>
    </>
  )
}

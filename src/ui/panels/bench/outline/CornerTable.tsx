import { useEffect, useRef } from 'react'
import type { Corner } from '#analysis/room.ts'
import { deleteCorner, moveCorner } from '#state/commands/outline.ts'
import { Heads, LengthCell } from '#ui/panels/bench/tables/rows.tsx'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useRoom, useSession, useView } from '#ui/session.ts'

export function CornerTable() {
  const room = useRoom()
  return (
    <table className="figures cards">
      <caption>Corners, from the plan's origin: x to the right, y up</caption>
      <Heads heads={['Corner', 'x', 'y']} />
      <tbody>
        {room.corners.map((corner, index) => (
          <CornerRow key={corner.id} corner={corner} number={index + 1} />
        ))}
      </tbody>
    </table>
  )
}

function CornerRow({ corner, number }: { readonly corner: Corner; readonly number: number }) {
  const room = useRoom()
  const { document, view } = useSession()
  const isPicked = useView((state) => state.cornerId === corner.id)
  const run = useRun()
  const row = useRef<HTMLTableRowElement>(null)
  useEffect(() => {
    if (isPicked) row.current?.scrollIntoView({ block: 'nearest' })
  }, [isPicked])
  return (
    <tr ref={row} aria-current={isPicked ? 'true' : undefined}>
      <th scope="row">
        <button
          type="button"
          className="row-button"
          onClick={() => view.setState({ cornerId: corner.id, thing: null })}
        >
          Corner {number}
        </button>
      </th>
      <LengthCell
        head="x"
        name={`corner-${number}-x`}
        label={`Corner ${number}, x`}
        value={corner.xMm}
        onCommit={(x) => run(moveCorner(room.id, corner.id, x, corner.yMm))}
      />
      <LengthCell
        head="y"
        name={`corner-${number}-y`}
        label={`Corner ${number}, y`}
        value={corner.yMm}
        onCommit={(y) => run(moveCorner(room.id, corner.id, corner.xMm, y))}
      />
      <td data-label="" className="row-verbs">
        <button
          type="button"
          className="row-button"
          disabled={room.corners.length <= 3}
          onClick={() => document.run(deleteCorner(room.id, corner.id))}
        >
          Delete<span className="visually-hidden"> corner {number}</span>
        </button>
      </td>
    </tr>
  )
}

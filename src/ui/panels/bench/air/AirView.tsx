import { closedUpCautions, ductCautions } from '#analysis/cautions/air.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import { Airtightness } from '#ui/panels/bench/air/Airtightness.tsx'
import { BoxTable } from '#ui/panels/bench/air/BoxTable.tsx'
import { Ducts } from '#ui/panels/bench/air/Ducts.tsx'
import { LeakTable } from '#ui/panels/bench/air/LeakTable.tsx'
import { NeedPart } from '#ui/panels/bench/air/NeedPart.tsx'
import { ReverberationPart } from '#ui/panels/bench/air/ReverberationPart.tsx'
import { Problems } from '#ui/panels/bench/tables/rows.tsx'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useRoom } from '#ui/session.ts'

/** How air comes in and out, what it costs in space, and where sound gets through beside it. */
export function AirView() {
  const room = useRoom()
  const { result, refusal } = useLedger()
  if (result === null) return <p className="table-note">{refusal}</p>
  return (
    <div className="table-place air-view">
      <NeedPart result={result} />
      <ReverberationPart />
      <Ducts result={result} />
      <BoxTable result={result} />
      <Airtightness result={result} />
      <LeakTable result={result} />
      <Cautions room={room} result={result} />
    </div>
  )
}

/** Said beside the choice itself, whatever has been chosen so far. */
function Cautions({ room, result }: { readonly room: Room; readonly result: SchemeResult }) {
  const cautions = [...closedUpCautions(room, result), ...ductCautions({ room })]
  return (
    <section className="air-part" aria-label="Before the room is closed up">
      <h3>Before the room is closed up</h3>
      <Problems texts={cautions.map(({ text }) => text)} />
    </section>
  )
}

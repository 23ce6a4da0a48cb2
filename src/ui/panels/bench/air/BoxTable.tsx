import type { SchemeResult } from '#analysis/results.ts'
import type { SilencerBox } from '#analysis/scheme.ts'
import { addBox, changeBox } from '#state/commands/boxes.ts'
import { BOX_SOURCE, usualBox } from '#state/usualAir.ts'
import { boxesOf } from '#ui/canvas/planRoom.ts'
import { usePlanRoom } from '#ui/canvas/usePlanRoom.ts'
import { AngleField } from '#ui/fields/AngleField.tsx'
import { ServesField, StandsField } from '#ui/panels/bench/air/BoxForm.tsx'
import { boxEntries } from '#ui/panels/bench/air/boxEntries.ts'
import { boxTakes } from '#ui/panels/bench/air/boxWords.ts'
import { EntryCells, Heads, NothingYet, TableVerbs, ThingRow } from '#ui/panels/bench/tables/rows.tsx'
import { useFreePlace } from '#ui/panels/bench/tables/useFreePlace.ts'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { useRecordedScheme, useRun } from '#ui/panels/bench/useBench.ts'
import { bothAreas } from '#ui/panels/words.ts'
import { useShownProject } from '#ui/session.ts'

const HEADS = ['Silencer box', 'x', 'y', 'Width', 'Depth', 'Height', 'Height under it', 'Turned']

/** The silencer boxes of the scheme, in numbers, and the floor they take. */
export function BoxTable({ result }: { readonly result: SchemeResult }) {
  const scheme = useRecordedScheme()
  const room = usePlanRoom()
  const { units } = useShownProject()
  const verbs = useThingVerbs()
  const place = useFreePlace()
  const boxes = boxesOf(room)
  const add = () => {
    const [x, y] = place()
    verbs.add('box', addBox(scheme.id, usualBox(room, scheme, x, y, units)))
  }
  return (
    <section className="air-part" aria-label="Silencer boxes">
      <h3>Silencer boxes</h3>
      <TableVerbs label="Add to the silencer boxes">
        <button type="button" className="row-button" onClick={add}>
          Add a silencer box
        </button>
      </TableVerbs>
      {boxes.length === 0 ? (
        <NothingYet
          text={`No box is placed in ${scheme.name} yet. A box takes room: place it, and the ledger counts it. Size offered: ${BOX_SOURCE}.`}
        />
      ) : (
        <table className="figures cards wide-table">
          <caption>
            In {scheme.name} alone, outside sizes; x and y are of the middle. Standing boxes take{' '}
            {bothAreas(result.ledger.floorAreaM2.lostToBoxes, units)} of the floor. Size offered: {BOX_SOURCE}.
          </caption>
          <Heads heads={HEADS} />
          <tbody>
            {boxes.map((box) => (
              <BoxRow key={box.id} box={box} result={result} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}

function BoxRow({ box, result }: { readonly box: SilencerBox; readonly result: SchemeResult }) {
  const scheme = useRecordedScheme()
  const run = useRun()
  const { units } = useShownProject()
  const check = result.boxes.find(({ id }) => id === box.id)
  return (
    <ThingRow
      thing={{ kind: 'box', id: box.id }}
      name={box.name}
      columns={HEADS.length + 1}
      under={
        <div className="row-fields">
          <StandsField box={box} quiet />
          <ServesField box={box} quiet />
          <span className="bench-said">
            {boxTakes(box, result, units)
              .map(([what, figure]) => `${what}: ${figure}`)
              .join('. ')}
            .
          </span>
        </div>
      }
      says={check?.problems.map(({ text }) => text) ?? []}
    >
      <EntryCells id={box.id} of={box.name} entries={boxEntries(scheme.id, box)} />
      <td data-label="Turned">
        <AngleField
          name={`${box.id}-angle`}
          label={`Turned, ${box.name}`}
          quiet
          compact
          value={box.angleDeg}
          onCommit={(angleDeg) => run(changeBox(scheme.id, box.id, { angleDeg }))}
        />
      </td>
    </ThingRow>
  )
}

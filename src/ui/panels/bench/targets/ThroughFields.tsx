import type { FarSide } from '#analysis/room.ts'
import type { Receiver, ReceiverPlace, Through } from '#analysis/target.ts'
import { CheckField } from '#ui/fields/CheckField.tsx'
import { benchSurfaces } from '#ui/panels/bench/candidates.ts'
import { Problems } from '#ui/panels/bench/tables/rows.tsx'
import { OutdoorCells } from '#ui/panels/bench/targets/OutdoorCells.tsx'
import type { ReceiverProps } from '#ui/panels/bench/targets/ReceiverForm.tsx'
import { farSideWords } from '#ui/panels/words.ts'
import { useRoom } from '#ui/session.ts'

/** The surfaces sound goes through on its way, by name with what is behind them; outdoors how far and how screened each is. */
export function ThroughFields({ receiver, change }: ReceiverProps) {
  const room = useRoom()
  const { id, name, place, through } = receiver
  const isOutdoors = place.kind === 'outdoors'
  const surfaces = benchSurfaces(room).map(({ facts, label }) => ({ id: facts.id, label, farSide: facts.farSide }))
  const order = surfaces.map((surface) => surface.id)
  const doubts = surfaces.flatMap(({ id: surface, label, farSide }) =>
    through.some((part) => part.surface === surface) && !canBeBehind(farSide, place.kind)
      ? [
          `${label}: ${farSideWords(farSide)} is said to be behind it, which is not where ${name} is. Leave it out, or say there what is behind it.`,
        ]
      : [],
  )
  const says = through.length === 0 ? ['No surface is named, so there is no path to judge: name at least one.'] : doubts
  return (
    <div className="through">
      <table className={isOutdoors ? 'figures cards' : 'figures'}>
        <caption className="visually-hidden">Surfaces on the way to {name}</caption>
        <thead>
          <tr>
            <th scope="col">Surface</th>
            <th scope="col">Behind it</th>
            {isOutdoors && <th scope="col">Distance from it</th>}
            {isOutdoors && <th scope="col">Screened by, dB</th>}
          </tr>
        </thead>
        <tbody>
          {surfaces.map(({ id: surface, label, farSide }) => {
            const part = through.find((one) => one.surface === surface)
            return (
              <tr key={surface}>
                <th scope="row">
                  <CheckField
                    name={`${id}-through-${surface}`}
                    label={label}
                    isChecked={part !== undefined}
                    onCheck={(isOn) => change({ through: toggled(receiver, surface, isOn, order) })}
                  />
                </th>
                <td data-label="Behind it">{farSideWords(farSide)}</td>
                {isOutdoors && <OutdoorCells {...{ receiver, change, part, label }} />}
              </tr>
            )
          })}
        </tbody>
      </table>
      {isOutdoors && (
        <p className="table-note">
          A distance left empty is that from the room. Screened: what a wall, a corner or a roof on the way takes off.
        </p>
      )}
      <Problems texts={says} />
    </div>
  )
}

/** The list with a surface in it or out of it, in the order of the room. */
function toggled({ through }: Receiver, surface: string, isOn: boolean, order: readonly string[]): readonly Through[] {
  const now = isOn ? [...through, { surface }] : through.filter((part) => part.surface !== surface)
  return [...now].sort((a, b) => order.indexOf(a.surface) - order.indexOf(b.surface))
}

/** Whether a receiver of this kind may be where the surface says; noise comes in from anywhere but soil. */
function canBeBehind(farSide: FarSide, kind: ReceiverPlace['kind']): boolean {
  if (kind === 'room') return farSide === 'neighbour' || farSide === 'own-house'
  return kind === 'outdoors' ? farSide === 'outdoors' : farSide !== 'soil'
}

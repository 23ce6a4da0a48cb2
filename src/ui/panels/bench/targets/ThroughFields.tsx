import type { Receiver, Through } from '#analysis/target.ts'
import { CheckField } from '#ui/fields/CheckField.tsx'
import { NumberField } from '#ui/fields/NumberField.tsx'
import { benchSurfaces } from '#ui/panels/bench/candidates.ts'
import { OwnDistance } from '#ui/panels/bench/targets/OwnDistance.tsx'
import type { ReceiverProps } from '#ui/panels/bench/targets/ReceiverForm.tsx'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { farSideWords } from '#ui/panels/words.ts'
import { useRoom } from '#ui/session.ts'

/** The surfaces sound goes through on its way, by name with what is behind them; outdoors how far and how screened each is. */
export function ThroughFields({ receiver, change }: ReceiverProps) {
  const room = useRoom()
  const { id, place, through } = receiver
  const isOutdoors = place.kind === 'outdoors'
  const surfaces = benchSurfaces(room).map(({ facts, label }) => ({ id: facts.id, label, farSide: facts.farSide }))
  return (
    <>
      <ul className={isOutdoors ? 'through-list is-outdoors' : 'through-list'}>
        {surfaces.map(({ id: surface, label, farSide }) => {
          const part = through.find((one) => one.surface === surface)
          return (
            <li key={surface}>
              <CheckField
                name={`${id}-through-${surface}`}
                label={`${label}, behind it ${farSideWords(farSide)}`}
                isChecked={part !== undefined}
                onCheck={(isOn) => change({ through: toggled(receiver, surface, isOn, surfaces) })}
              />
              {isOutdoors && part && <OutdoorPart {...{ receiver, change, part, label }} />}
            </li>
          )
        })}
      </ul>
      {through.length === 0 && (
        <p className="bench-said target-missing">
          <span className="warn-sign" aria-hidden="true" />
          No surface is named, so there is no path to judge: name at least one.
        </p>
      )}
    </>
  )
}

/** The list with a surface in it or out of it, in the order of the room. */
function toggled(
  { through }: Receiver,
  surface: string,
  isOn: boolean,
  order: readonly { readonly id: string }[],
): readonly Through[] {
  const now = isOn ? [...through, { surface }] : through.filter((part) => part.surface !== surface)
  const at = ({ surface: id }: Through) => order.findIndex((one) => one.id === id)
  return [...now].sort((a, b) => at(a) - at(b))
}

interface PartProps extends ReceiverProps {
  readonly part: Through
  readonly label: string
}

function OutdoorPart({ receiver, change, part, label }: PartProps) {
  const kept = useKept()
  const { id, through } = receiver
  const set = (patch: Omit<Through, 'surface'>) =>
    change({ through: through.map((one) => (one.surface === part.surface ? cleaned({ ...one, ...patch }) : one)) })
  return (
    <>
      <OwnDistance receiver={receiver} part={part} label={label} onSet={(distanceMm) => set({ distanceMm })} />
      <NumberField
        name={`${id}-screened-${part.surface}`}
        label="Screened or turned away by, dB"
        of={label}
        unit="dB"
        what="What screens it"
        example={5}
        value={part.screenedDb ?? 0}
        onCommit={(screenedDb) => set({ screenedDb: screenedDb ?? 0 })}
        kept={kept(`${id}-screened-${part.surface}`)}
      />
    </>
  )
}

/** What says nothing is left out of the file. */
function cleaned({ surface, distanceMm, screenedDb }: Through): Through {
  return {
    surface,
    ...(distanceMm === undefined ? {} : { distanceMm }),
    ...(screenedDb === undefined || screenedDb === 0 ? {} : { screenedDb }),
  }
}

import type { Through } from '#analysis/target.ts'
import { NumberField } from '#ui/fields/NumberField.tsx'
import { OwnDistance } from '#ui/panels/bench/targets/OwnDistance.tsx'
import type { ReceiverProps } from '#ui/panels/bench/targets/ReceiverForm.tsx'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'

interface Props extends ReceiverProps {
  /** undefined: it is not heard through this surface. */
  readonly part: Through | undefined
  readonly label: string
}

/** How far the receiver is from one surface, and what stands in between. */
export function OutdoorCells({ receiver, change, part, label }: Props) {
  const kept = useKept()
  if (!part) return <td colSpan={2} />
  const { id, through } = receiver
  const set = (patch: Omit<Through, 'surface'>) =>
    change({ through: through.map((one) => (one.surface === part.surface ? cleaned({ ...one, ...patch }) : one)) })
  return (
    <>
      <td data-label="Distance from it">
        <OwnDistance receiver={receiver} part={part} label={label} onSet={(distanceMm) => set({ distanceMm })} />
      </td>
      <td data-label="Screened by, dB">
        <NumberField
          name={`${id}-screened-${part.surface}`}
          label="Screened by, dB"
          of={label}
          quiet
          compact
          unit="dB"
          what="What screens it"
          example={5}
          value={part.screenedDb ?? 0}
          onCommit={(screenedDb) => set({ screenedDb: screenedDb ?? 0 })}
          kept={kept(`${id}-screened-${part.surface}`)}
        />
      </td>
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

import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { wallEnds } from '#ui/panels/bench/wallLength.ts'
import { useRoom, useSession, useView } from '#ui/session.ts'

/** Which end moves when a wall's length is typed: kept for all walls until it is changed. */
export function MovingEnd({ wallId }: { readonly wallId?: string }) {
  const { view } = useSession()
  const room = useRoom()
  const movingEnd = useView((state) => state.movingEnd)
  const [start, end] = wallId === undefined ? ['its start', 'its end'] : wallEnds(room, wallId).map(cornerWords)
  return (
    <ChoiceField
      name="moving-end"
      label="When a length is typed"
      value={movingEnd}
      options={[
        { value: 'to', text: `${end} moves` },
        { value: 'from', text: `${start} moves` },
      ]}
      onChoose={(moving) => view.setState({ movingEnd: moving })}
    />
  )
}

function cornerWords(number: number, index: number): string {
  return `its ${index === 0 ? 'start' : 'end'}, corner ${number},`
}

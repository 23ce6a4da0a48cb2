import type { Hinge, LobbyDoor, Opening, Swing } from '#analysis/room.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { wallEnds } from '#ui/panels/bench/wallLength.ts'
import { useRoom } from '#ui/session.ts'

interface Props {
  readonly opening: Opening
  readonly change: (patch: Partial<Omit<Opening, 'id'>>) => string | null
}

const SWINGS: readonly { value: Swing; text: string }[] = [
  { value: 'in', text: 'Into the room' },
  { value: 'out', text: 'Out of the room' },
]

/** How the leaves of a door hang and swing. */
export function LeafFields({ opening, change }: Props) {
  const { id, lobby } = opening
  return (
    <>
      <ChoiceField<Opening['leaves']>
        name={`${id}-leaves`}
        label="Leaves"
        value={opening.leaves}
        options={[
          { value: 'one', text: 'One leaf' },
          { value: 'two', text: 'Two leaves' },
        ]}
        onChoose={(leaves) => change({ leaves })}
      />
      {opening.leaves === 'one' && (
        <HingeField
          name={`${id}-hinge`}
          label="Hinged"
          opening={opening}
          value={opening.hinge}
          onChoose={(hinge) => change({ hinge })}
        />
      )}
      <ChoiceField<Swing>
        name={`${id}-swing`}
        label="Swings"
        value={opening.swing}
        options={SWINGS}
        onChoose={(swing) => change({ swing })}
      />
      <ChoiceField<Opening['hungIn']>
        name={`${id}-hung-in`}
        label="The leaf hangs in"
        value={opening.hungIn}
        options={[
          { value: 'existing', text: 'The existing wall' },
          { value: 'lining', text: 'The new lining' },
        ]}
        onChoose={(hungIn) => change({ hungIn })}
      />
      <ChoiceField<'one' | 'lobby'>
        name={`${id}-lobby`}
        label="Doors"
        value={lobby ? 'lobby' : 'one'}
        options={[
          { value: 'one', text: 'One door' },
          { value: 'lobby', text: 'Two, with a lobby between' },
        ]}
        onChoose={(doors) => change({ lobby: doors === 'lobby' ? OFFERED_LOBBY : null })}
      />
      {lobby && <LobbyFields opening={opening} lobby={lobby} change={change} />}
    </>
  )
}

/** A lobby door as it is first offered: away from the outer door, which usually swings in. */
const OFFERED_LOBBY: LobbyDoor = { hinge: 'from', swing: 'in' }

function LobbyFields({ opening, lobby, change }: Props & { readonly lobby: LobbyDoor }) {
  return (
    <>
      <HingeField
        name={`${opening.id}-lobby-hinge`}
        label="Lobby door hinged"
        opening={opening}
        value={lobby.hinge}
        onChoose={(hinge) => change({ lobby: { ...lobby, hinge } })}
      />
      <ChoiceField<Swing>
        name={`${opening.id}-lobby-swing`}
        label="Lobby door swings"
        value={lobby.swing}
        options={SWINGS}
        onChoose={(swing) => change({ lobby: { ...lobby, swing } })}
      />
    </>
  )
}

interface HingeProps {
  readonly name: string
  readonly label: string
  readonly opening: Opening
  readonly value: Hinge
  readonly onChoose: (hinge: Hinge) => void
}

function HingeField({ name, label, opening, value, onChoose }: HingeProps) {
  const [first, second] = wallEnds(useRoom(), opening.wall)
  return (
    <ChoiceField<Hinge>
      name={name}
      label={label}
      value={value}
      options={[
        { value: 'from', text: `On the side of corner ${first}` },
        { value: 'to', text: `On the side of corner ${second}` },
      ]}
      onChoose={onChoose}
    />
  )
}

import { absorptionArea } from '#acoustics/levels.ts'
import furnishing from '#analysis/data/furnishing.json' with { type: 'json' }
import { USUAL_REVERBERATION_S } from '#analysis/paths/absorption.ts'
import type { Furnishing, ReceiverPlace } from '#analysis/target.ts'
import { setReverberation } from '#state/commands/air.ts'
import { CheckField } from '#ui/fields/CheckField.tsx'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { NumberField } from '#ui/fields/NumberField.tsx'
import { SpaceField } from '#ui/fields/SpaceField.tsx'
import type { ReceiverProps } from '#ui/panels/bench/targets/ReceiverForm.tsx'
import { useKept } from '#ui/panels/bench/targets/useKept.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useRoom, useShownProject } from '#ui/session.ts'
import { unreachable } from '#units/result.ts'

/** Where the receiver is: the size of its room and what stands in it, or how far away it is. */
export function PlaceFields({ receiver, change }: ReceiverProps) {
  const { place } = receiver
  switch (place.kind) {
    case 'room':
      return <RoomFields id={receiver.id} place={place} change={change} />
    case 'outdoors':
      return <OutdoorFields id={receiver.id} place={place} change={change} />
    case 'this-room':
      return <OwnRoomFields id={receiver.id} />
    default:
      return unreachable(place)
  }
}

interface PartProps<Kind extends ReceiverPlace['kind']> extends Pick<ReceiverProps, 'change'> {
  readonly id: string
  readonly place: Extract<ReceiverPlace, { kind: Kind }>
}

const FURNISHINGS: readonly { readonly value: Furnishing; readonly text: string }[] = [
  { value: 'furnished', text: `Furnished, ${furnishing.receiver.furnished.reverberationS} s` },
  { value: 'bare', text: `Bare, ${furnishing.receiver.bare.reverberationS} s` },
  { value: 'typed', text: 'Absorption typed' },
]

function RoomFields({ id, place, change }: PartProps<'room'>) {
  const kept = useKept()
  const { units } = useShownProject()
  const { volumeM3, furnishing: stands, absorptionM2 } = place
  return (
    <>
      <SpaceField
        name={`${id}-volume`}
        label="Volume of that room"
        kind="volume"
        value={volumeM3}
        unit={units}
        onCommit={(volume) => change({ place: { ...place, volumeM3: volume } })}
        kept={kept(`${id}-volume`)}
      />
      <ChoiceField<Furnishing>
        name={`${id}-furnishing`}
        label="What stands in it"
        value={stands}
        options={FURNISHINGS}
        hint={furnishingWords(stands)}
        onChoose={(now) => change({ place: furnished(place, now) })}
      />
      {stands === 'typed' && (
        <SpaceField
          name={`${id}-absorption`}
          label="Its absorption area"
          kind="area"
          value={absorptionM2}
          unit={units}
          onCommit={(area) => change({ place: { ...place, absorptionM2: area } })}
          kept={kept(`${id}-absorption`)}
        />
      )}
    </>
  )
}

function furnishingWords(stands: Furnishing): string | null {
  if (stands === 'typed') return null
  const { source, status } = furnishing.receiver[stands]
  return `It rings that long: ${source}. Status: ${status}.`
}

/** Absorption that is to be typed begins as what the room had, so that nothing jumps. */
function furnished(place: PartProps<'room'>['place'], now: Furnishing): PartProps<'room'>['place'] {
  if (now !== 'typed') return { ...place, furnishing: now }
  const seconds = place.furnishing === 'bare' ? 'bare' : 'furnished'
  const absorptionM2 = place.absorptionM2 ?? absorptionArea(place.volumeM3, furnishing.receiver[seconds].reverberationS)
  return { ...place, furnishing: now, absorptionM2 }
}

function OutdoorFields({ id, place, change }: PartProps<'outdoors'>) {
  const kept = useKept()
  const { units } = useShownProject()
  return (
    <>
      <LengthField
        name={`${id}-distance`}
        label="Distance from the room"
        value={place.distanceMm}
        unit={units}
        onCommit={(distanceMm) => change({ place: { ...place, distanceMm } })}
        kept={kept(`${id}-distance`)}
      />
      <CheckField
        name={`${id}-facade`}
        label="It stands before a wall that reflects: 3 dB more"
        isChecked={place.atFacade}
        onCheck={(atFacade) => change({ place: { ...place, atFacade } })}
      />
    </>
  )
}

function OwnRoomFields({ id }: { readonly id: string }) {
  const kept = useKept()
  const run = useRun()
  const room = useRoom()
  return (
    <NumberField
      name={`${id}-reverberation`}
      label={`${room.name} rings, s`}
      unit="s"
      what="A reverberation time"
      example={USUAL_REVERBERATION_S}
      step={0.1}
      value={room.reverberationS ?? null}
      canBeEmpty
      hint={`Empty: ${USUAL_REVERBERATION_S} s is taken, ${furnishing.roomReverberationS.source}.`}
      onCommit={(seconds) => run(setReverberation(room.id, seconds))}
      kept={kept(`${id}-reverberation`)}
    />
  )
}

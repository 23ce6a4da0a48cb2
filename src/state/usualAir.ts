import { BARE_REVERBERATION_S, FURNISHED_REVERBERATION_S } from '#analysis/paths/absorption.ts'
import steps from '#analysis/paths/next/data/ductSteps.json' with { type: 'json' }
import type { Duct, DuctMade, Room, Silencer } from '#analysis/room.ts'
import type { Hole, Scheme, SilencerBox } from '#analysis/scheme.ts'
import { freeId } from '#state/commands/edit.ts'
import usual from '#state/data/usual-air.json' with { type: 'json' }
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

const DUCT_NAMES: Readonly<Record<Duct['purpose'], string>> = {
  supply: 'Supply duct',
  return: 'Return duct',
  other: 'Duct',
}

/** Bare sheet without a bend: nothing is done against the sound in it. */
export const NOTHING_DONE: DuctMade = { liningMm: 0, linedLengthMm: 0, bends: 0, silencer: null }

/** A duct as it is offered first: round, bare, to the outdoors where the room has a wall towards it. */
export function usualDuct(purpose: Duct['purpose'], room: Room, units: LengthUnit): Omit<Duct, 'id'> {
  const outwards = room.walls.find(({ farSide }) => farSide === 'outdoors')
  return {
    name: freeName(DUCT_NAMES[purpose], room.ducts ?? []),
    surface: outwards?.id ?? room.ceiling.id,
    purpose,
    shape: 'round',
    ...usual.duct[units],
    leadsTo: [],
    made: NOTHING_DONE,
  }
}

/** Thickness of a lining offered first. */
export function usualLiningMm(units: LengthUnit): Millimetres {
  return usual.lining[units]
}

/** A silencer that can be picked by name, with where its figures come from. */
export interface SilencerPreset extends Silencer {
  readonly source: string
}

/** Silencers offered by name; all from memory, with low confidence. */
export const SILENCER_PRESETS: readonly SilencerPreset[] = [
  ...usual.silencers.map(({ name, insertionLossDb, source }) => ({ name, insertionLossDb, source })),
  ...steps.silencers.map(({ name, insertionLossDb, source }) => ({ name, insertionLossDb, source })),
]

/** Size of a silencer box offered first, with where it comes from. */
export const BOX_SOURCE: string = usual.box.source

/** A silencer box as it is offered first: standing, with its middle at a place. */
export function usualBox(
  room: Room,
  { boxes = [] }: Pick<Scheme, 'boxes'>,
  xMm: Millimetres,
  yMm: Millimetres,
  units: LengthUnit,
): Omit<SilencerBox, 'id'> {
  const served = new Set(boxes.map(({ duct }) => duct))
  const duct = room.ducts?.find(({ id }) => !served.has(id))?.id ?? null
  const name = freeName('Silencer box', boxes)
  return { name, duct, room: room.id, xMm, yMm, ...usual.box[units], angleDeg: 0, undersideMm: 0 }
}

/** Reverberation times of a finished room to pick from, s. @source common practice, no source */
export const REVERBERATION_PRESETS: readonly { readonly name: string; readonly seconds: number }[] = [
  { name: 'Treated', seconds: usual.treatedReverberationS.value },
  { name: 'Furnished', seconds: FURNISHED_REVERBERATION_S },
  { name: 'Bare', seconds: BARE_REVERBERATION_S },
]

/** A gap until its own width is typed. */
export const TYPED_GAP_MM: Millimetres = usual.typedGapMm

/** A hole as it is offered first. */
export function usualHole(holes: readonly Hole[]): Hole {
  const { name, diameterMm, count } = usual.hole
  const id = freeId(
    'hole',
    holes.map((hole) => hole.id),
  )
  return { id, name: freeName(name, holes), diameterMm, count }
}

/** A name, numbered from the second on. */
function freeName(plain: string, others: readonly { readonly name: string }[]): string {
  const taken = new Set(others.map(({ name }) => name))
  let name = plain
  for (let n = 2; taken.has(name); n += 1) name = `${plain} ${n}`
  return name
}

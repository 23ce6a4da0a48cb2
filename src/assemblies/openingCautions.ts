import type { OpeningType } from '#assemblies/opening.ts'
import { formatSurfaceMass } from '#units/format.ts'

/** A leaf this heavy needs hinges and a frame chosen for it. @source common practice, no source */
const HEAVY_LEAF_KG_M2 = 30

const FIRE_DOOR =
  'A fire door stays a fire door: keep its rated leaf, frame, seals and self-closer, and ask the building official before any of them is changed.'
const CLEAR_WIDTH =
  'Check the clear width between frame and open leaf: many codes ask 32 in (813 mm) of the way out, and the door has to open from inside without a key.'
const TWO_DOORS =
  'Whoever leaves passes two doors: both have to open from inside without a key, and nobody may be locked in between them.'
const SAFETY_GLASS =
  'Glass near the floor, in a door or beside one has to be safety glass in most codes: ask your building department.'
const ESCAPE_WINDOW =
  'Never plug, fill in or fix shut a window people may have to escape through: find out first whether this is one, and ask your building department.'
const ESCAPE_DOOR = 'Never fill in a door that is a way out until the building department has agreed to another.'
const COMBUSTION_AIR =
  'A vent may bring a fuel-burning appliance its air, or people theirs: never close it before both have another supply.'

/** Whether it shuts the opening for good: neither people nor air get through. */
export function closesForGood({ seals, loss }: Pick<OpeningType, 'seals' | 'loss'>): boolean {
  return seals === 'none' && loss.kind !== 'open' && loss.kind !== 'duct'
}

function isGlass({ kinds, loss }: OpeningType): boolean {
  return kinds.includes('window') && loss.kind !== 'as-the-wall'
}

/** What must be read wherever a type of opening is chosen, by what it is. */
export function usualOpeningCautions(type: OpeningType): readonly string[] {
  const { kinds, loss, massKgM2 } = type
  const isFilling = loss.kind === 'as-the-wall'
  const isDoor = kinds.includes('door') && !isFilling
  return [
    ...(isDoor ? [FIRE_DOOR, CLEAR_WIDTH] : []),
    ...(loss.kind === 'pair' ? [TWO_DOORS] : []),
    ...(isDoor && massKgM2 !== null && massKgM2 >= HEAVY_LEAF_KG_M2 ? [heavyLeaf(massKgM2)] : []),
    ...(isGlass(type) ? [SAFETY_GLASS] : []),
    ...(kinds.includes('window') && closesForGood(type) ? [ESCAPE_WINDOW] : []),
    ...(kinds.includes('door') && isFilling ? [ESCAPE_DOOR] : []),
    ...(kinds.includes('vent') && closesForGood(type) ? [COMBUSTION_AIR] : []),
  ]
}

function heavyLeaf(massKgM2: number): string {
  return `A leaf weighs about ${formatSurfaceMass(massKgM2, 'mm')} (${formatSurfaceMass(massKgM2, 'ft-in')}): frame, hinges and the wall round it have to be chosen for that weight, and it has to open with little force.`
}

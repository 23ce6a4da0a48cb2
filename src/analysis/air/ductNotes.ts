import { OCTAVES_HZ } from '#acoustics/bands.ts'
import { capForDisplay, octaveLoss } from '#acoustics/curve.ts'
import { type DuctAir, ductAir } from '#analysis/air/ductAir.ts'
import type { AirNeed } from '#analysis/air/need.ts'
import { bothAirflows, bothVelocities, nextDuctSize } from '#analysis/air/words.ts'
import { boxesIn } from '#analysis/boxes/placed.ts'
import { bothLengths, list } from '#analysis/cautions/words.ts'
import table from '#analysis/data/air.json' with { type: 'json' }
import { ductAreaM2, ductLossOf, ductMade } from '#analysis/paths/ductPaths.ts'
import type { Note, SchemeResult } from '#analysis/results.ts'
import type { Duct, Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Receiver } from '#analysis/target.ts'
import type { Decibels, Hertz, LengthUnit } from '#units/quantity.ts'

/** What the sentences on a duct are made from. */
export interface DuctSetting {
  readonly room: Room
  readonly scheme: Scheme
  readonly result: Pick<SchemeResult, 'surfaces'>
  readonly receivers: readonly Receiver[]
  readonly need: AirNeed
  readonly units: LengthUnit
}

/** Everything a designer has to know of one duct: its air, whom it talks to, how weak it is beside its surface. */
export function ductNotes(duct: Duct, setting: DuctSetting): readonly Note[] {
  const { room, need, receivers } = setting
  return [
    ...airNotes(duct, ductAir(duct, room, need, receivers), setting.units),
    ...sharedNotes(duct, receivers),
    ...nobodyNotes(duct),
    ...boxNotes(duct, setting),
    ...weakNotes(duct, setting),
  ]
}

function airNotes(duct: Duct, air: DuctAir, units: LengthUnit): readonly Note[] {
  const { shareLPerS, velocityMS, limitMS, enoughDiameterMm, limit } = air
  if (limitMS === null) return []
  const most = `${bothVelocities(limitMS)} for ${limit.words}`
  const beyond = air.isPrinted ? '' : ' No velocity is printed for that curve; it is carried on from the nearest.'
  if (shareLPerS === null || velocityMS === null || enoughDiameterMm === null) {
    return [
      {
        code: 'air-unknown',
        text: `Its grille may be at most ${most}.${beyond} Say how many people there are to see its own.`,
      },
    ]
  }
  const now = `${bothAirflows(shareLPerS)} through it moves at ${bothVelocities(velocityMS)}`
  if (velocityMS <= limitMS) return [{ code: 'air-slow', text: `${now}; at most ${most}.${beyond}` }]
  const size = bothLengths(nextDuctSize(enoughDiameterMm, units))
  return [
    {
      code: 'air-fast',
      text: `${duct.name}: ${now}, faster than ${most}, so it would be heard: a round duct of ${size} would be slow enough.${beyond}`,
    },
  ]
}

/** A duct that two rooms have a grille on carries speech and music between them. */
function sharedNotes(duct: Duct, receivers: readonly Receiver[]): readonly Note[] {
  const names = receivers
    .filter(({ id, place }) => place.kind === 'room' && duct.leadsTo.includes(id))
    .map(({ name }) => name)
  if (names.length === 0) return []
  const { bends, lengthMm } = table.crosstalk
  const text = `${duct.name} leads from here to ${list(names)} and works like a small loudspeaker there: give this room a duct of its own; where that cannot be, line it over ${bothLengths(lengthMm)} at least with ${bends} bends or more, or put a silencer at both ends (common practice, no source).`
  return [{ code: 'shared-duct', text }]
}

function nobodyNotes({ leadsTo, name }: Duct): readonly Note[] {
  if (leadsTo.length > 0) return []
  const text = `${name} leads to no receiver, so its sound is in nobody's sum: say whom it leads to, the point outdoors where it ends included.`
  return [{ code: 'leads-nowhere', text }]
}

/** A silencer without its box takes no room, and a box without its silencer takes no sound: each is said of the other. */
function boxNotes(duct: Duct, { room, scheme }: DuctSetting): readonly Note[] {
  const box = boxesIn(room, scheme).find(({ box: { duct: serves } }) => serves === duct.id)?.box
  const { silencer } = ductMade(duct, scheme)
  if (silencer && !box) {
    const text = `No box is placed for ${silencer.name} in ${scheme.name}: where it takes room in here, add it below, so that the ledger counts it.`
    return [{ code: 'silencer-without-box', text }]
  }
  if (!box || silencer) return []
  const text = `${box.name} serves ${duct.name} and no silencer is said of it in ${scheme.name}, so it takes room and no sound: say what it takes off by octave.`
  return [{ code: 'box-without-silencer', text }]
}

/** Where more sound goes through a duct than through all of the surface it pierces. */
function weakNotes(duct: Duct, { scheme, result }: DuctSetting): readonly Note[] {
  const surface = result.surfaces.find(({ id }) => id === duct.surface)
  const weakest = weakestOctave(duct, scheme, surface)
  if (!surface || weakest === null) return []
  const text = `At ${weakest.hz} Hz ${duct.name} lets through ${Math.round(weakest.moreDb)} dB more than all of ${surface.label} does: here the duct decides, not the ${surface.kind}.`
  return [{ code: 'duct-decides', text }]
}

function weakestOctave(
  duct: Duct,
  scheme: Scheme,
  surface: SchemeResult['surfaces'][number] | undefined,
): { readonly hz: Hertz; readonly moreDb: Decibels } | null {
  if (!surface?.rating || !(surface.soundAreaM2 > 0)) return null
  const own = octaveLoss(ductLossOf(duct, ductMade(duct, scheme)))
  const beside = octaveLoss(capForDisplay(surface.rating.prediction.lossDb))
  const smallerDb = 10 * Math.log10(surface.soundAreaM2 / ductAreaM2(duct))
  const more = own.map((loss, octave) => beside[octave]! - loss - smallerDb)
  const moreDb = Math.max(...more)
  return moreDb >= LEAST_TOLD_DB ? { hz: OCTAVES_HZ[more.indexOf(moreDb)]!, moreDb } : null
}

/** A difference worth telling, dB. @source our own choice */
const LEAST_TOLD_DB: Decibels = 1

/** What the ducts of a room together leave open: air that has no way in or out. */
export function flowNotes({ ducts = [] }: Room, { people }: AirNeed): readonly Note[] {
  const has = (purpose: Duct['purpose']) => ducts.some((duct) => duct.purpose === purpose)
  if (!has('supply') && !has('return')) {
    if (people === 0) return []
    return [{ code: 'no-air', text: 'No duct brings air into this room yet: add a supply and a return.' }]
  }
  if (!has('supply')) return [{ code: 'no-supply', text: 'Air goes out of this room and none comes in: add a supply.' }]
  if (has('return')) return []
  return [
    {
      code: 'no-return',
      text: 'Air comes into this room and none goes out: add a return, or it comes in by the cracks alone.',
    },
  ]
}

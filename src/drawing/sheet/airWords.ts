import { OCTAVES_HZ, octaveList } from '#acoustics/bands.ts'
import { ductMade } from '#analysis/paths/ductPaths.ts'
import { jointOf, USUAL_AIRTIGHTNESS } from '#analysis/paths/leakPaths.ts'
import type { Duct, DuctMade, Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { SheetHeard } from '#drawing/sheet/heard.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** How tight the joints are taken to be, what stands open, and every duct as the scheme makes it. */
export function airTexts({ scheme, receivers }: SheetHeard, room: Room, units: LengthUnit): readonly string[] {
  const joint = jointOf(scheme.airtightness ?? USUAL_AIRTIGHTNESS)
  const names = new Map(receivers.map(({ receiver: { id, name } }) => [id, name]))
  return [
    `Airtightness: ${joint.name}. ${joint.means} Status: ${joint.status}.`,
    ...openTexts(scheme, room, units),
    ...(room.ducts ?? []).map((duct) => ductText(duct, ductMade(duct, scheme), names, units)),
  ]
}

/** Gaps and holes that were typed for single surfaces. */
function openTexts({ leaks = {} }: Scheme, room: Room, units: LengthUnit): readonly string[] {
  const surfaces = [
    ...room.walls.map(({ id }, index) => ({ id, label: `Wall ${index + 1}` })),
    { id: room.ceiling.id, label: 'Ceiling' },
    { id: room.floor.id, label: 'Floor' },
  ]
  return surfaces.flatMap(({ id, label }) => {
    const leak = Object.hasOwn(leaks, id) ? leaks[id] : undefined
    if (!leak) return []
    const gap = leak.gapMm === undefined ? [] : [`a gap of ${leak.gapMm} mm all round, typed`]
    const holes = leak.holes.map(
      ({ name, diameterMm, count }) => `${name}, ${count} × Ø ${formatLength(diameterMm, units)}`,
    )
    const parts = [...gap, ...holes]
    return parts.length === 0 ? [] : [`${label}: ${parts.join('; ')}.`]
  })
}

function ductText(duct: Duct, made: DuctMade, names: ReadonlyMap<string, string>, units: LengthUnit): string {
  const length = (value: number) => formatLength(value, units)
  const size =
    duct.shape === 'round' ? `Ø ${length(duct.widthMm)}` : `${length(duct.widthMm)} × ${length(duct.heightMm)}`
  const lining = made.liningMm > 0 ? `lined ${length(made.liningMm)} over ${length(made.linedLengthMm)}` : 'not lined'
  const bends = made.bends === 1 ? '1 bend' : `${made.bends} bends`
  const to = duct.leadsTo.flatMap((id) => names.get(id) ?? [])
  const leads = to.length === 0 ? 'leads to nobody named here' : `leads to ${to.join(', ')}`
  return `${duct.name}, ${size}, ${length(duct.lengthMm)} from grille to grille, ${lining}, ${bends}, ${silencerWords(made)}; ${leads}.`
}

function silencerWords({ silencer }: DuctMade): string {
  if (!silencer) return 'no silencer'
  const values = octaveList(silencer.insertionLossDb)
  const stated = OCTAVES_HZ.map((hz, octave) => `${values[octave] ?? 'not stated'} at ${hz}`)
  return `${silencer.name} with an insertion loss, dB at Hz, of ${stated.join(', ')}`
}

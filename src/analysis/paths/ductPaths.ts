import { type BandCurve, OCTAVES_HZ, octaveList } from '#acoustics/bands.ts'
import { flatCurve } from '#acoustics/curve.ts'
import { ductLoss } from '#acoustics/duct.ts'
import table from '#analysis/data/airtightness.json' with { type: 'json' }
import type { Path } from '#analysis/paths/answer.ts'
import { endsAt, type Found, NOTHING, type PathSetting } from '#analysis/paths/setting.ts'
import type { Note } from '#analysis/results.ts'
import type { Duct, DuctMade } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { SquareMetres } from '#units/quantity.ts'

const DUCT_SD = flatCurve(table.sdDb.duct.value)

/** The ways through the ducts that lead to a receiver, grille to grille. */
export function ductPaths({ input, receiver }: PathSetting): Found {
  const ducts = (input.room.ducts ?? []).filter(({ leadsTo }) => leadsTo.includes(receiver.id))
  const paths = ducts.map((duct): Path => {
    const made = ductMade(duct, input.scheme)
    const through = receiver.through.find(({ surface }) => surface === duct.surface)
    return {
      id: `duct:${duct.id}`,
      kind: 'duct',
      label: duct.name,
      element: duct.id,
      areaM2: ductAreaM2(duct),
      lossDb: ductLossOf(duct, made),
      sdDb: DUCT_SD,
      basis: 'calculated',
      ...endsAt(receiver, through),
      notes: silencerNotes(duct, made),
    }
  })
  return { ...NOTHING, paths }
}

/** A duct as it is in a scheme. */
export function ductMade(duct: Duct, { ducts }: Scheme): DuctMade {
  return (ducts && Object.hasOwn(ducts, duct.id) ? ducts[duct.id] : undefined) ?? duct.made
}

/** Free area of a duct, m2. */
export function ductAreaM2({ shape, widthMm, heightMm }: Duct): SquareMetres {
  return (shape === 'round' ? (Math.PI / 4) * widthMm ** 2 : widthMm * heightMm) / 1e6
}

/** The last loss of every duct: a hand that drags a wall changes none. */
const known = new WeakMap<Duct, { readonly made: DuctMade; readonly lossDb: BandCurve }>()

/** Transmission loss of a duct grille to grille for its own free area, dB over BANDS_HZ. */
export function ductLossOf(duct: Duct, made: DuctMade): BandCurve {
  const last = known.get(duct)
  if (last?.made === made) return last.lossDb
  const lossDb = predicted(duct, made)
  known.set(duct, { made, lossDb })
  return lossDb
}

function predicted(duct: Duct, made: DuctMade): BandCurve {
  const { shape, widthMm, heightMm, lengthMm } = duct
  return ductLoss({
    perimeterMm: shape === 'round' ? Math.PI * widthMm : 2 * (widthMm + heightMm),
    areaM2: ductAreaM2(duct),
    lengthM: lengthMm / 1000,
    liningMm: made.liningMm,
    linedLengthM: made.linedLengthMm / 1000,
    bends: made.bends,
    silencerDb: made.silencer ? octaveList(made.silencer.insertionLossDb) : OCTAVES_HZ.map(() => null),
    end: 'flush',
  })
}

/** Said of octaves a silencer has no figure for. */
function silencerNotes(duct: Duct, { silencer }: DuctMade): readonly Note[] {
  if (!silencer) return []
  const silent = OCTAVES_HZ.filter((_, octave) => octaveList(silencer.insertionLossDb)[octave] === null)
  if (silent.length === 0) return []
  const text = `${duct.name}: nothing is stated for ${silencer.name} at ${silent.join(', ')} Hz, so nothing is counted there.`
  return [{ code: 'silencer-not-stated', text }]
}

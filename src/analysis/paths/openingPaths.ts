import type { BandCurve } from '#acoustics/bands.ts'
import { capForDisplay } from '#acoustics/curve.ts'
import { openingArea, soundOfOpening } from '#analysis/openings/sound.ts'
import type { Path, UnknownPath } from '#analysis/paths/answer.ts'
import { named } from '#analysis/paths/names.ts'
import { type Crossed, endsAt, type Found, joined, NOTHING, type PathSetting } from '#analysis/paths/setting.ts'
import type { Opening } from '#analysis/room.ts'
import type { OpeningSound } from '#assemblies/openingSound.ts'

/** The ways through the doors, windows and vents in the walls a receiver is behind, and past their seals. */
export function openingPaths(setting: PathSetting): Found {
  return joined(setting.crossed.flatMap((one) => one.openings.map((opening) => openingPath(setting, one, opening))))
}

function openingPath(setting: PathSetting, one: Crossed, opening: Opening): Found {
  const check = setting.input.result.openings.find(({ id }) => id === opening.id)
  const tooLarge = check?.problems.find(({ code }) => code === 'wider-than-wall' || code === 'above-ceiling')
  if (tooLarge) return unknown(opening, tooLarge.text)
  const sound = soundOfOpening(setting.input, opening)
  return sound.ok ? heardThrough(setting, one, opening, sound.value) : unknown(opening, sound.error)
}

function unknown({ id, name }: Opening, why: string): Found {
  const path: UnknownPath = { id, kind: 'opening', label: name, element: id, why }
  return { ...NOTHING, unknown: [path] }
}

const capped = new WeakMap<BandCurve, BandCurve>()

/** A curve as it is summed; the same object for as long as the opening's is, so that its octaves are taken once. */
function cappedCurve(lossDb: BandCurve): BandCurve {
  const curve = capped.get(lossDb) ?? capForDisplay(lossDb)
  capped.set(lossDb, curve)
  return curve
}

function heardThrough({ receiver }: PathSetting, { through }: Crossed, opening: Opening, sound: OpeningSound): Found {
  const { id, name } = opening
  const ends = endsAt(receiver, through)
  const leaf: Path = {
    id,
    kind: 'opening',
    label: name,
    element: id,
    areaM2: openingArea(opening),
    lossDb: cappedCurve(sound.lossDb),
    sdDb: sound.sdDb,
    basis: sound.basis,
    ...ends,
    notes: sound.notes.map(({ code, text }) => ({ code, text: `${name}: ${text}` })),
  }
  const { seal } = sound
  if (!seal || !(seal.areaM2 > 0)) return { ...NOTHING, paths: [leaf] }
  const gap: Path = {
    id: `seal:${id}`,
    kind: 'leak',
    label: `The seals of ${named(name)}`,
    element: id,
    areaM2: seal.areaM2,
    lossDb: seal.lossDb,
    sdDb: seal.sdDb,
    basis: 'assumed',
    ...ends,
    notes: [],
  }
  return { ...NOTHING, paths: [leaf, gap] }
}

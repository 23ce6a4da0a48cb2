import type { BandCurve } from '#acoustics/bands.ts'
import { openingMade } from '#analysis/openings/made.ts'
import type { Path, UnknownPath } from '#analysis/paths/answer.ts'
import { named } from '#analysis/paths/names.ts'
import {
  type Crossed,
  endsAt,
  type Found,
  joined,
  NOTHING,
  openingAreaM2,
  openingPerimeterMm,
  type PathSetting,
} from '#analysis/paths/setting.ts'
import { cappedLoss } from '#analysis/paths/surfacePaths.ts'
import type { Opening } from '#analysis/room.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import type { OpeningMade } from '#assemblies/opening.ts'
import { openingSound } from '#assemblies/openingLoss.ts'
import type { OpeningSound } from '#assemblies/openingSound.ts'
import type { Millimetres } from '#units/quantity.ts'
import type { Result } from '#units/result.ts'

/** The ways through the doors, windows and vents in the walls a receiver is behind, and past their seals. */
export function openingPaths(setting: PathSetting): Found {
  return joined(setting.crossed.flatMap((one) => one.openings.map((opening) => openingPath(setting, one, opening))))
}

function openingPath(setting: PathSetting, one: Crossed, opening: Opening): Found {
  const { scheme, result } = setting.input
  const check = result.openings.find(({ id }) => id === opening.id)
  const tooWide = check?.problems.find(({ code }) => code === 'wider-than-wall')
  if (tooWide) return unknown(opening, tooWide.text)
  const made = openingMade(opening, scheme)
  if (made === null) {
    return unknown(opening, `${opening.name}: nobody has said what it is; choose it under Openings.`)
  }
  const pairGapMm = opening.lobby && check ? check.revealDepthMm : null
  const sound = soundOf(opening, { made, pairGapMm, wall: wallOf(one), catalogue: setting.input.catalogue })
  return sound.ok
    ? heardThrough(setting, one, opening, sound.value)
    : unknown(opening, `${opening.name}: ${sound.error}`)
}

function unknown({ id, name }: Opening, why: string): Found {
  const path: UnknownPath = { id, kind: 'opening', label: name, element: id, why }
  return { ...NOTHING, unknown: [path] }
}

interface Curves {
  readonly lossDb: BandCurve
  readonly sdDb: BandCurve
}

function wallOf({ surface }: Crossed): Curves | null {
  const prediction = surface.rating?.prediction
  return prediction ? { lossDb: cappedLoss(prediction), sdDb: prediction.spreadBandDb } : null
}

/** What an opening's figure follows from beside the opening itself. */
interface Asked {
  readonly made: OpeningMade
  readonly pairGapMm: Millimetres | null
  readonly wall: Curves | null
  readonly catalogue: Catalogue
}

interface Kept {
  readonly asked: Asked
  readonly sound: Result<OpeningSound, string>
}

/** The last figure of every opening: a hand that drags something else asks for it again at every step. */
const known = new WeakMap<Opening, Kept>()

function isSame(one: Asked, other: Asked): boolean {
  return (
    one.made === other.made &&
    one.pairGapMm === other.pairGapMm &&
    one.wall?.lossDb === other.wall?.lossDb &&
    one.wall?.sdDb === other.wall?.sdDb &&
    one.catalogue === other.catalogue
  )
}

function soundOf(opening: Opening, asked: Asked): Result<OpeningSound, string> {
  const last = known.get(opening)
  if (last && isSame(last.asked, asked)) return last.sound
  const { kind, widthMm, heightMm } = opening
  const sound = openingSound(asked.made, {
    catalogue: asked.catalogue,
    kind,
    areaM2: openingAreaM2(opening),
    perimeterMm: jointMm(opening),
    widthMm,
    heightMm,
    wall: asked.wall,
    pairGapMm: asked.pairGapMm,
  })
  known.set(opening, { asked, sound })
  return sound
}

/** All round, and down the middle where two leaves meet. */
function jointMm(opening: Opening): Millimetres {
  const meets = opening.kind === 'door' && opening.leaves === 'two' ? opening.heightMm : 0
  return openingPerimeterMm(opening) + meets
}

function heardThrough({ receiver }: PathSetting, { through }: Crossed, opening: Opening, sound: OpeningSound): Found {
  const { id, name } = opening
  const ends = endsAt(receiver, through)
  const leaf: Path = {
    id,
    kind: 'opening',
    label: name,
    element: id,
    areaM2: openingAreaM2(opening),
    lossDb: sound.lossDb,
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

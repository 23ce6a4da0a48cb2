import type { BandCurve } from '#acoustics/bands.ts'
import { spaceBetween } from '#analysis/openings/leaves.ts'
import { openingMade } from '#analysis/openings/made.ts'
import { wallThickness } from '#analysis/openings/site.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Opening, OpeningKind, Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import type { OpeningMade } from '#assemblies/opening.ts'
import { openingSound } from '#assemblies/openingLoss.ts'
import { lossWithLeak } from '#assemblies/openingSeals.ts'
import type { OpeningContext, OpeningSound } from '#assemblies/openingSound.ts'
import type { Millimetres, SquareMetres } from '#units/quantity.ts'
import { fail, type Result } from '#units/result.ts'

/** What an opening is judged in. */
export interface OpeningSurroundings {
  readonly room: Room
  readonly scheme: Pick<Scheme, 'openings'>
  /** Of that room under that scheme. */
  readonly result: Pick<SchemeResult, 'surfaces'>
  readonly catalogue: Catalogue
}

function isRound({ kind, shape }: Opening): boolean {
  return kind === 'vent' && shape === 'round'
}

/** Area between the jambs as they stand; of a round vent its circle. */
export function openingArea(opening: Opening): SquareMetres {
  const { widthMm, heightMm } = opening
  return isRound(opening) ? (Math.PI * widthMm ** 2) / 4e6 : (widthMm * heightMm) / 1e6
}

/** All the way round its leaf, and down the middle where two leaves meet. */
export function openingPerimeter(opening: Opening): Millimetres {
  const { kind, leaves, widthMm, heightMm } = opening
  if (isRound(opening)) return Math.PI * widthMm
  const meets = kind === 'door' && leaves === 'two' ? heightMm : 0
  return 2 * (widthMm + heightMm) + meets
}

/** Where an opening is, as its sound is told. */
export function openingContext(
  { room, result, catalogue }: Omit<OpeningSurroundings, 'scheme'>,
  opening: Opening,
): OpeningContext {
  const surface = result.surfaces.find(({ id }) => id === opening.wall)
  const prediction = surface?.rating?.prediction
  const wall = room.walls.find(({ id }) => id === opening.wall)
  const isPairDrawn = opening.kind === 'door' && opening.lobby !== null && wall !== undefined
  return {
    catalogue,
    kind: opening.kind,
    areaM2: openingArea(opening),
    perimeterMm: openingPerimeter(opening),
    widthMm: opening.widthMm,
    heightMm: opening.heightMm,
    wall: prediction ? { lossDb: prediction.lossDb, sdDb: prediction.spreadBandDb } : null,
    pairGapMm: isPairDrawn
      ? spaceBetween(opening, { faceMm: surface?.netDepthMm ?? 0, wallMm: wallThickness(catalogue, wall) })
      : null,
  }
}

/** What goes through an opening under a scheme; a full sentence, which names it, where that is not known. */
export function soundOfOpening(around: OpeningSurroundings, opening: Opening): Result<OpeningSound, string> {
  const made = openingMade(opening, around.scheme)
  return made ? soundOfMade(around, opening, made) : fail(notSaid(opening))
}

/** The same with something else in it. */
export function soundOfMade(
  around: Omit<OpeningSurroundings, 'scheme'>,
  opening: Opening,
  made: OpeningMade,
): Result<OpeningSound, string> {
  if (around.catalogue.openingTypes.get(made.type)?.loss.kind === 'duct' && !hasDuct(around.room, opening)) {
    return fail(
      `${opening.name} is served by a duct, and no duct goes through its wall: add one under Air and leaks, or say what closes it.`,
    )
  }
  return kept(opening, made, openingContext(around, opening))
}

interface Kept {
  readonly made: OpeningMade
  readonly context: OpeningContext
  readonly sound: Result<OpeningSound, string>
}

/** The last figure of every opening: a hand that drags something else asks for it again at every step. */
const known = new WeakMap<Opening, Kept>()

function kept(opening: Opening, made: OpeningMade, context: OpeningContext): Result<OpeningSound, string> {
  const last = known.get(opening)
  if (last?.made === made && isSame(last.context, context)) return last.sound
  const found = openingSound(made, context)
  const sound = found.ok ? found : fail(`${opening.name}: ${found.error}`)
  known.set(opening, { made, context, sound })
  return sound
}

/** Sizes are the opening's own: the same object has the same ones. */
function isSame(one: OpeningContext, other: OpeningContext): boolean {
  return (
    one.catalogue === other.catalogue &&
    one.pairGapMm === other.pairGapMm &&
    one.wall?.lossDb === other.wall?.lossDb &&
    one.wall?.sdDb === other.wall?.sdDb
  )
}

/** The leaf and the gap of its seals together, dB over BANDS_HZ, for the opening's area. */
export function wholeLoss({ lossDb, seal }: OpeningSound, opening: Opening): BandCurve {
  return seal ? lossWithLeak(lossDb, seal, openingArea(opening)) : lossDb
}

function hasDuct({ ducts }: Room, { wall }: Opening): boolean {
  return (ducts ?? []).some(({ surface }) => surface === wall)
}

const KIND: Readonly<Record<OpeningKind, string>> = {
  door: 'door',
  window: 'window',
  'vehicle-door': 'vehicle door',
  vent: 'vent',
}

/** Why nothing is known of an opening that nobody has described. */
export function notSaid({ name, kind }: Opening): string {
  return `Nobody has said what ${name} is, so nothing is known of its sound: say what this ${KIND[kind]} is under Openings.`
}

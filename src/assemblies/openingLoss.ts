import type { BandCurve } from '#acoustics/bands.ts'
import { shiftCurve } from '#acoustics/curve.ts'
import { lobbyAbsorption, pairLoss } from '#acoustics/pair.ts'
import table from '#assemblies/data/openings.json' with { type: 'json' }
import type { LeafMade, OpeningKind, OpeningMade, OpeningType } from '#assemblies/opening.ts'
import {
  asTheWall,
  contourCurve,
  layersCurve,
  OPEN_CURVE,
  type OpeningCurve,
  octavesCurve,
  paneLayers,
  stcOf,
} from '#assemblies/openingCurves.ts'
import { openingNotes } from '#assemblies/openingNotes.ts'
import { canBeUndercut, type SealLeak, sealLeak, withLeak } from '#assemblies/openingSeals.ts'
import type { OpeningContext, OpeningSound } from '#assemblies/openingSound.ts'
import { fail, ok, type Result, unreachable } from '#units/result.ts'

/** Two-sided 95 % of a normal distribution. */
const SDS_95 = 1.96

/**
 * Transmission loss of what stands in an opening, of its seals apart.
 * @returns a full sentence where nothing can be said: unknown is never 0 dB and never the wall
 */
export function openingSound(made: OpeningMade, context: OpeningContext): Result<OpeningSound, string> {
  const type = typeOf(made, context)
  if (!type.ok) return type
  const undercut = undercutRefusal(made, context.kind)
  if (undercut) return fail(undercut)
  return isPair(made, type.value) ? pairSound(made, type.value, context) : leafSound(made, type.value, context)
}

/** Two doors one behind the other: a type that is a pair, or a second leaf named beside the first. */
export function isPair(made: OpeningMade, type: OpeningType): boolean {
  return type.loss.kind === 'pair' || made.second !== undefined
}

function typeOf({ type }: LeafMade, { catalogue, kind }: OpeningContext): Result<OpeningType, string> {
  const found = catalogue.openingTypes.get(type)
  if (!found) return fail(`The catalogue has no opening type "${type}": choose again what this ${KIND[kind]} is.`)
  if (!found.kinds.includes(kind)) {
    return fail(`"${found.name}" does not stand in a ${KIND[kind]}: choose again what this ${KIND[kind]} is.`)
  }
  return ok(found)
}

const KIND: Readonly<Record<OpeningKind, string>> = {
  door: 'door',
  window: 'window',
  'vehicle-door': 'vehicle door',
  vent: 'vent',
}

function undercutRefusal({ seal, second }: OpeningMade, kind: OpeningKind): string | null {
  if (canBeUndercut(kind) || (seal !== 'undercut' && second?.seal !== 'undercut')) return null
  return `A ${KIND[kind]} has no gap over the floor: say again how its seals are.`
}

function leafSound(made: OpeningMade, type: OpeningType, context: OpeningContext): Result<OpeningSound, string> {
  const curve = curveOf(made, type, context)
  if (!curve.ok) return curve
  const seal = sealLeak({ ...type, ...sizeOf(context) }, made.seal)
  return ok(finished(curve.value, seal, made, type, context))
}

function sizeOf({ areaM2, perimeterMm, widthMm, kind }: OpeningContext) {
  return { areaM2, perimeterMm, widthMm, kind }
}

function curveOf(
  { panes }: Pick<OpeningMade, 'panes'>,
  { loss, name }: OpeningType,
  { wall }: OpeningContext,
): Result<OpeningCurve, string> {
  switch (loss.kind) {
    case 'octaves':
      return ok(octavesCurve(loss))
    case 'contour':
      return ok(contourCurve(loss.stc, loss.sdDb))
    case 'layers':
      return layersCurve(loss.layers)
    case 'panes':
      return layersCurve(paneLayers(panes ?? loss.usual))
    case 'as-the-wall':
      return wall ? ok(asTheWall(wall, loss)) : fail(noWall(name))
    case 'duct':
      return wall ? ok(asTheWall(wall, { lessDb: 0, sdDb: 0 })) : fail(noWall(name))
    case 'open':
      return ok(OPEN_CURVE)
    case 'pair':
      return fail(`"${name}" is two doors: it cannot be one leaf of another pair.`)
    default:
      return unreachable(loss)
  }
}

function noWall(name: string): string {
  return `"${name}" takes its figure from the wall it stands in, and that wall has no rating: choose what is built there by its own figure.`
}

/** One leaf of a pair with its seals in it. */
function pairLeaf(made: LeafMade, context: OpeningContext): Result<OpeningCurve, string> {
  const type = typeOf(made, context)
  if (!type.ok) return type
  const curve = curveOf({}, type.value, context)
  if (!curve.ok) return curve
  const leak = sealLeak({ ...type.value, ...sizeOf(context) }, made.seal)
  return ok(withLeak(curve.value, leak, context.areaM2))
}

/** The two leaves of a pair by name, as its type and what was chosen say. */
export function leavesOfPair(made: OpeningMade, type: OpeningType): readonly [LeafMade, LeafMade] {
  const { loss } = type
  const first = { type: loss.kind === 'pair' ? loss.first : made.type, seal: made.seal }
  const usual = { type: loss.kind === 'pair' ? loss.second : made.type, seal: made.seal }
  return [first, made.second ?? usual]
}

function pairSound(made: OpeningMade, type: OpeningType, context: OpeningContext): Result<OpeningSound, string> {
  const { loss } = type
  const [first, second] = leavesOfPair(made, type).map((leaf) => pairLeaf(leaf, context))
  if (!first?.ok) return first ?? fail('A pair has two doors.')
  if (!second?.ok) return second ?? fail('A pair has two doors.')
  const gapMm = context.pairGapMm ?? (loss.kind === 'pair' ? loss.gapMm : null)
  if (gapMm === null) {
    return fail(
      'Nobody has said how far apart the two doors stand: give this opening its lobby door, or choose a pair with a stated gap.',
    )
  }
  if (gapMm <= 0) {
    return fail(
      'The two doors stand in one place: a lobby door hangs in a new lining, so build one there or hang the first door in the existing wall.',
    )
  }
  const { areaM2, perimeterMm } = context
  const absorptionM2 = lobbyAbsorption({ areaM2, perimeterMm, gapMm, isLined: loss.kind === 'pair' && loss.isLined })
  const curve: OpeningCurve = {
    lossDb: pairLoss(first.value.lossDb, second.value.lossDb, { areaM2, gapMm, absorptionM2 }),
    sdDb: first.value.sdDb.map((sd, band) => Math.hypot(sd, second.value.sdDb[band]!, table.pair.sdDb)),
    sdStcDb: Math.hypot(first.value.sdStcDb, second.value.sdStcDb, table.pair.sdDb),
    assumed: [...new Set([...first.value.assumed, ...second.value.assumed])],
  }
  return ok(finished(curve, null, made, type, context))
}

function finished(
  curve: OpeningCurve,
  seal: SealLeak | null,
  made: OpeningMade,
  type: OpeningType,
  context: OpeningContext,
): OpeningSound {
  const moved = (sds: number): BandCurve => {
    const leaf = { ...curve, lossDb: shiftCurve(curve.lossDb, sds * curve.sdStcDb).map((loss) => Math.max(0, loss)) }
    const gap = seal && { ...seal, lossDb: seal.lossDb.map((loss, band) => Math.max(0, loss + sds * seal.sdDb[band]!)) }
    return withLeak(leaf, gap, context.areaM2).lossDb
  }
  const stc = stcOf(moved(0))
  const range = [stcOf(moved(-SDS_95)) ?? 0, stcOf(moved(SDS_95)) ?? 0] as const
  return {
    lossDb: curve.lossDb,
    sdDb: curve.sdDb,
    basis: basisOf(made, type),
    seal,
    notes: openingNotes({ made, type, context, assumed: curve.assumed, stc }),
    stc,
    likely: stc === null ? null : range,
    assumedOctaves: curve.assumed,
    publishedWords: isAsPublished(made, type, context) ? publishedWords(type) : null,
  }
}

function basisOf(made: OpeningMade, type: OpeningType): OpeningSound['basis'] {
  const { loss, source } = type
  if (isPair(made, type)) return 'calculated'
  if (loss.kind === 'octaves') return source.status === 'seen' ? 'published' : 'assumed'
  if (loss.kind === 'contour') return 'assumed'
  return loss.kind === 'as-the-wall' && loss.lessDb > 0 ? 'assumed' : 'calculated'
}

/** What is in print was measured as the type says and well sealed: other leaves, panes, gaps or seals have no printed value. */
function isAsPublished({ seal, second, panes }: OpeningMade, { loss, seals }: OpeningType, context: OpeningContext) {
  if (second !== undefined || panes !== undefined) return false
  if (loss.kind === 'pair' && context.pairGapMm !== null && context.pairGapMm !== loss.gapMm) return false
  return seal === 'good' || seals === 'none'
}

function publishedWords({ published }: OpeningType): string | null {
  if (!published) return null
  const { stc, range, source } = published
  const between = range ? ` (${range[0]} to ${range[1]})` : ''
  const status = source.status === 'seen' ? 'read' : source.status === 'memory' ? 'from memory' : source.status
  return `${stc}${between}, ${source.text}, ${status}`
}

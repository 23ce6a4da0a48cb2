import { BANDS_HZ, type BandCurve } from '#acoustics/bands.ts'
import table from '#acoustics/data/spread.json' with { type: 'json' }
import { isMasonryLeaf, isPaneLeaf } from '#acoustics/layered/leafKind.ts'

import type { Cavity, LayeredSystem, Link } from '#acoustics/layered/system.ts'
import type { Decibels } from '#units/quantity.ts'

/** Kinds of construction with an accuracy of their own. */
export type Family = keyof typeof table.families

/** How far a published measurement may lie from the prediction: one standard deviation. */
export interface Spread {
  readonly family: Family
  readonly stcDb: Decibels
}

/** Frames deeper than this are joists, mm. @source own choice between 152 mm studs and 235 mm joists */
const JOISTS_FROM_MM = 180
/** A family as uncertain as this in STC is wider in every band, too. @source own choice */
const WIDE_FROM_STC_DB = 5

/** Added to the spread, as a root of squares, where the method was never tried. */
export const OUTSIDE_RANGE_DB: Decibels = table.outsideRange.stcDb

/** Links by hardware no published measurement was matched against. */
export function isUnpublishedLink(link: Link): boolean {
  return link.kind === 'sound-clip' || link.kind === 'low-profile-clip' || link.kind === 'spring-hanger'
}

/** A floor that floats on a resilient layer or on mounts. */
export function isFloatingLink(link: Link): boolean {
  return link.kind === 'resilient-layer' || link.kind === 'floor-mounts'
}

/** Boards screwed straight to a stiff frame: the least certain class in print. */
export function isDirectFixed(link: Link): boolean {
  return link.kind === 'wood-stud' || link.kind === 'load-bearing-steel-stud'
}

function isAllGlass(system: LayeredSystem): boolean {
  return system.leaves.every(isPaneLeaf)
}

function oneLeafFamily(system: LayeredSystem): Family {
  if (system.leaves.every(isMasonryLeaf)) return 'masonry'
  return isAllGlass(system) ? 'glazing' : 'single-leaf'
}

/** A frame as deep as joists are. */
export function isOnJoists(cavity: Cavity): boolean {
  return cavity.depthMm >= JOISTS_FROM_MM
}

function framedFamily(cavity: Cavity): Family {
  const onJoists = isOnJoists(cavity)
  if (isDirectFixed(cavity.link)) return onJoists ? 'joists-direct' : 'direct-fixed'
  return onJoists && cavity.link.kind === 'resilient-channel' ? 'joists-channel' : 'framed-wall'
}

/** The family a construction is judged by; the least certain one that fits. */
export function familyOf(system: LayeredSystem): Family {
  const [first] = system.cavities
  if (first === undefined) return oneLeafFamily(system)
  if (system.cavities.some((cavity) => isFloatingLink(cavity.link))) return 'floating-floor'
  if (system.cavities.some((cavity) => isUnpublishedLink(cavity.link))) return 'clips'
  if (system.leaves.length > 2) return 'triple-leaf'
  if (system.leaves.some(isMasonryLeaf)) return 'masonry-lined'
  return isAllGlass(system) ? 'glazing' : framedFamily(first)
}

/**
 * What laboratories differ by for the same construction, one standard deviation of STC, dB.
 * @source data/spread.json
 */
export function laboratorySd(system: LayeredSystem): Decibels {
  const { laboratory, floorStcDb, damping } = table
  const damped = system.leaves.some((leaf) => leaf.dampedJoints.length > 0) ? damping.stcDb : 0
  return Math.hypot(Math.max(floorStcDb, laboratoryOf(system, laboratory)), damped)
}

function laboratoryOf({ leaves, cavities }: LayeredSystem, laboratory: typeof table.laboratory): Decibels {
  const [cavity] = cavities
  if (cavity === undefined || leaves.some(isMasonryLeaf)) return laboratory.usual
  const onJoists = isOnJoists(cavity)
  if (isDirectFixed(cavity.link) && onJoists) return laboratory.joistsDirect.stcDb
  if (isDirectFixed(cavity.link) && leaves.some(({ sheets }) => sheets.length > 1))
    return laboratory.twoLayersDirect.stcDb
  const isTied = cavity.link.kind === 'light-steel-stud' || cavity.link.kind === 'resilient-channel'
  return isTied && cavity.fillMm === 0 && !onJoists ? laboratory.emptyCavity.stcDb : laboratory.usual
}

/** Place of a band in the table of band spreads. */
function bandSd(hz: number): Decibels {
  const { upToHz, sdDb } = table.bands
  const place = upToHz.findIndex((limit) => hz <= limit)
  return sdDb[place] ?? sdDb[sdDb.length - 1]!
}

/**
 * Spread to expect around a prediction.
 * @source data/spread.json: residuals against published tables and the spread between laboratories
 */
export function spreadOf(system: LayeredSystem): Spread {
  const family = familyOf(system)
  const own = table.families[family].stcDb
  const damping = system.leaves.some((leaf) => leaf.dampedJoints.length > 0) ? table.damping.stcDb : 0
  const stcDb = Math.max(table.floorStcDb, Math.hypot(own, damping))
  return { family, stcDb }
}

/**
 * Spread of every band beside a spread of STC, dB over BANDS_HZ, one standard deviation: larger than that of STC,
 * because errors of bands partly cancel in a single number.
 * @source data/spread.json
 */
export function bandSpread(stcDb: Decibels): BandCurve {
  const widening = stcDb >= WIDE_FROM_STC_DB ? table.bands.wideFamilies : 1
  return BANDS_HZ.map((hz) => widening * bandSd(hz))
}

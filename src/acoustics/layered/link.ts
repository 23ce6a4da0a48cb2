import links from '#acoustics/data/links.json' with { type: 'json' }
import type { ConnectionModel, LineConnection, PointConnection } from '#acoustics/layered/connection.ts'
import { isMasonryLeaf } from '#acoustics/layered/leafKind.ts'
import type { MethodOptions } from '#acoustics/layered/method.ts'
import { type Cavity, heldSideOf, type Leaf, type Link } from '#acoustics/layered/system.ts'
import { unreachable } from '#units/result.ts'

const FULL = 1

function shareOfDb(db: number): number {
  return 10 ** (db / 10)
}

/** The two leaves a link ties and what the method may use. */
interface Setting {
  readonly far: Leaf
  readonly room: Leaf
  readonly cavity: Cavity
  readonly method: MethodOptions
}

/** Span between lines that hold a leaf still, m; masonry is held by none. */
function spanOf(leaf: Leaf, span: number): number {
  return isMasonryLeaf(leaf) ? 0 : span
}

/** Wood or heavy steel studs and strapping: a rigid line to both leaves. @source Davy 1991 as in Vigran 2008 p. 295, seen */
function rigidLine(at: Setting, spacing: number, compliance: number): LineConnection {
  return {
    kind: 'line',
    spacing,
    compliance,
    spanFar: spanOf(at.far, spacing),
    spanRoom: spanOf(at.room, spacing),
    isSpring: true,
    share: FULL,
    isMasked: true,
  }
}

/** What still crosses at lines that are not rigid: a rigid line with a fitted share of its power. */
function residualLine(spacing: number): LineConnection {
  return {
    kind: 'line',
    spacing,
    compliance: 0,
    spanFar: 0,
    spanRoom: 0,
    isSpring: false,
    share: shareOfDb(links.residualPathDb.value),
    isMasked: true,
  }
}

/** Floor and ceiling plates that tie two rows of studs: lines 1.2 m apart, no spring beside the air. */
function plateLine(at: Setting, row: 'staggered' | 'separate', onChannel: boolean): LineConnection {
  const { plate } = links
  const yields = at.method.platesYield
  const isStaggered = row === 'staggered'
  const compliance = isStaggered ? plate.staggeredComplianceM2N : plate.separateComplianceM2N
  const channelDb = onChannel && isStaggered ? plate.withChannelDb : 0
  const fittedDb = isStaggered
    ? onChannel
      ? plate.staggeredWithChannelKappaDb
      : plate.staggeredKappaDb
    : plate.separateKappaDb
  return {
    kind: 'line',
    spacing: plate.spacingMm / 1000,
    compliance: yields ? compliance : 0,
    spanFar: 0,
    spanRoom: 0,
    isSpring: false,
    share: shareOfDb(yields ? channelDb : fittedDb),
    isMasked: false,
  }
}

/** Light steel studs: a springy line, softer the deeper the stud, and a residual rigid path. */
function lightSteel(at: Setting, spacing: number): readonly ConnectionModel[] {
  const { complianceM2N, atDepthMm, depthExponent } = links.lightSteelStud
  const compliance = complianceM2N * (at.cavity.depthMm / atDepthMm) ** depthExponent
  return [rigidLine(at, spacing, compliance), residualLine(spacing)]
}

function channel(at: Setting, link: Extract<Link, { kind: 'resilient-channel' }>): readonly ConnectionModel[] {
  if (link.frame === 'staggered-stud') return [plateLine(at, 'staggered', true)]
  if (link.frame === 'separate-studs') return [plateLine(at, 'separate', true)]
  const { contactStiffnessNM, contactSpacingOnMasonryMm } = links.resilientChannel
  const contacts = link.frame === 'masonry' ? contactSpacingOnMasonryMm : studSpacingOf(link)
  const spacing = link.channelSpacingMm / 1000
  const span = contacts / 1000
  const holdsRoom = heldSideOf(link) === 'room'
  return [
    {
      ...rigidLine(at, spacing, span / contactStiffnessNM),
      spanFar: spanOf(at.far, holdsRoom ? span : spacing),
      spanRoom: spanOf(at.room, holdsRoom ? spacing : span),
    },
    residualLine(spacing),
  ]
}

/** Distance between the studs behind a channel, mm; the usual spacing where it is not told. */
export function studSpacingOf(link: Extract<Link, { kind: 'resilient-channel' }>): number {
  return link.studSpacingMm ?? links.usualRow.spacingMm
}

/** Clips or hangers: springs at their points, and the residual rigid path along their rows. */
function points(rowMm: number, alongMm: number, stiffness: number, loss: number): readonly ConnectionModel[] {
  const spring: PointConnection = {
    kind: 'point',
    area: (rowMm / 1000) * (alongMm / 1000),
    stiffness,
    loss,
    isSpring: true,
    share: FULL,
    isMasked: true,
  }
  return [spring, residualLine(rowMm / 1000)]
}

/** Pads or springs under a floor: nothing but their springs crosses. */
function mounts(stiffnessMNm3: number, spacingMm: number): PointConnection {
  const area = (spacingMm / 1000) ** 2
  return {
    kind: 'point',
    area,
    stiffness: 1e6 * stiffnessMNm3 * area,
    loss: links.floatingFloor.loss,
    isSpring: true,
    share: FULL,
    isMasked: true,
  }
}

/** Two untied rows share floor and plates; panes and two masonry leaves stand free of each other. */
function untied(at: Setting, rowsBesideIt: boolean): readonly ConnectionModel[] {
  return rowsBesideIt ? [plateLine(at, 'separate', false)] : []
}

/**
 * Everything solid that crosses a cavity.
 * @param rowsBesideIt  at least one of its leaves stands on its own studs in this cavity
 * @source connection table of the method, constants and their origin in data/links.json
 */
export function modelLink(at: Setting, rowsBesideIt: boolean): readonly ConnectionModel[] {
  const { link } = at.cavity
  switch (link.kind) {
    case 'none':
      return untied(at, rowsBesideIt)
    case 'wood-stud':
    case 'load-bearing-steel-stud':
      return [rigidLine(at, link.spacingMm / 1000, 0)]
    case 'light-steel-stud':
      return lightSteel(at, link.spacingMm / 1000)
    case 'staggered-stud':
      return [plateLine(at, 'staggered', false)]
    case 'resilient-channel':
      return channel(at, link)
    case 'sound-clip':
    case 'low-profile-clip':
      return points(link.rowSpacingMm, link.clipSpacingMm, links.clip.stiffnessNM, links.pointLoss.value)
    case 'spring-hanger':
      return points(link.rowSpacingMm, link.hangerSpacingMm, links.springHanger.stiffnessNM, links.springHanger.loss)
    case 'resilient-layer':
      return []
    case 'floor-mounts':
      return [mounts(link.dynamicStiffnessMNm3, link.spacingMm)]
    default:
      return unreachable(link)
  }
}

import { openingMade } from '#analysis/openings/made.ts'
import type { BoxCheck, CornerAsBuilt, FurnitureCheck, OpeningCheck } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { nameIn } from '#reports/roomResults.ts'

/** An opening under a scheme as JSON says it; `leaves` is empty for what has none, `made` null where nobody said what fills it. */
export function openingReport(check: OpeningCheck, room: Room, scheme: Scheme | null) {
  const opening = room.openings.find(({ id }) => id === check.id)
  return {
    id: check.id,
    name: opening?.name ?? check.id,
    kind: opening?.kind ?? null,
    wall: opening?.wall ?? null,
    made: opening ? (scheme ? openingMade(opening, scheme) : (opening.made ?? null)) : null,
    clearWidthMm: check.clearWidthMm,
    clearHeightMm: check.clearHeightMm,
    revealDepthMm: check.revealDepthMm,
    thresholdStepMm: check.thresholdStepMm,
    leaves: (check.door?.leaves ?? []).map(({ hangs, swing, opensDeg, widthMm }) => ({
      hangs,
      swing,
      opensDeg,
      widthMm,
    })),
    problems: check.problems,
  }
}

export function boxReport({ id, name, footprint, undersideMm, heightMm, problems }: BoxCheck) {
  return { id, name, fits: problems.length === 0, footprint, undersideMm, heightMm, problems }
}

export function furnitureReport(check: FurnitureCheck, room: Room) {
  return {
    id: check.id,
    name: nameIn(room.furniture, check.id),
    fits: check.problems.length === 0,
    footprint: check.footprint,
    problems: check.problems,
  }
}

export function cornerReport(corner: CornerAsBuilt) {
  const { cornerId, walls, runsThrough, isChosen, gapMm, text, touchesUntreated } = corner
  return { corner: cornerId, walls, runsThrough, isChosen, gapMm, text, touchesUntreated }
}

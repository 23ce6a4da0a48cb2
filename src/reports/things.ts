import type { CornerAsBuilt, FurnitureCheck, OpeningCheck } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import { nameIn } from '#reports/roomResults.ts'

/** An opening under a scheme as JSON says it; `leaves` is empty for what has none. */
export function openingReport(check: OpeningCheck, room: Room) {
  const opening = room.openings.find(({ id }) => id === check.id)
  return {
    id: check.id,
    name: opening?.name ?? check.id,
    kind: opening?.kind ?? null,
    wall: opening?.wall ?? null,
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

import { largestCircleAcross } from '#analysis/largestCircle.ts'
import { publishedStc } from '#analysis/published.ts'
import type { Note, SchemeResult, SurfaceResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { SchemeHeard } from '#reports/heard.ts'
import { receiverReport } from '#reports/receivers.ts'
import { heardIn, type RoomResults } from '#reports/roomResults.ts'
import { boxReport, cornerReport, furnitureReport, openingReport } from '#reports/things.ts'

/** One scheme as the command line's JSON says it; unknown numbers are null and a note says why. */
export function schemeReport(result: SchemeResult, room: Room, heard: SchemeHeard | null = null) {
  const { ledger } = result
  return {
    name: result.name,
    floorAreaM2: ledger.floorAreaM2,
    keptPercent: ledger.keptPercent,
    clearSizeMm: ledger.clearSizeMm,
    clearHeightMm: ledger.clearHeightMm,
    drops: ledger.drops,
    areaAbove: ledger.areaAbove,
    heightFitMissMm: result.heights.worstMissMm,
    volumeM3: ledger.volumeM3,
    largestCircleMm: largestCircleAcross(result.clear),
    parts: ledger.parts,
    addedMassKg: ledger.addedMassKg,
    onJoistsKgM2: ledger.onJoistsKgM2,
    surfaces: result.surfaces.map(surfaceReport),
    receivers: (heard?.receivers ?? []).map(receiverReport),
    openings: result.openings.map((check) => openingReport(check, room, heard?.scheme ?? null)),
    boxes: result.boxes.map(boxReport),
    furniture: result.furniture.map((check) => furnitureReport(check, room)),
    corners: result.corners.map(cornerReport),
    notes: schemeNotes(room, heard),
    cautions: [...(heard?.cautions ?? []), ...result.cautions].map(({ code, kind, text, surfaces }) => ({
      code,
      kind,
      text,
      surfaces,
    })),
  }
}

/** Said beside every rating where nobody is set who hears it. */
export const SURFACES_ONLY =
  'Each rating is of one surface alone: doors, windows, leaks, ventilation and flanking are not in these figures.'
/** The same where somebody is. */
export const SURFACES_BESIDE_RECEIVERS =
  'Each rating is of one surface alone: doors, windows, leaks, ventilation and flanking are in the margins of the receivers only.'

const LEVEL_CEILING: Note = {
  code: 'ceiling-read-as-level',
  text: 'Several heights were measured and each ceiling is read as level at its lowest, as chosen for this room.',
}

/** What is true but doubtful of the whole scheme. */
export function schemeNotes(room: Room, heard: SchemeHeard | null = null): readonly Note[] {
  const isReadLevel =
    room.ceilingShape === 'level' && [room, ...room.ceilingParts].some(({ heights }) => heights.length > 1)
  const text = (heard?.receivers ?? []).length > 0 ? SURFACES_BESIDE_RECEIVERS : SURFACES_ONLY
  return [{ code: 'surfaces-only', text }, ...(isReadLevel ? [LEVEL_CEILING] : [])]
}

function surfaceReport(surface: SurfaceResult) {
  const { rating } = surface
  return {
    id: surface.id,
    kind: surface.kind,
    label: surface.label,
    assembly: surface.assembly,
    removeLining: surface.removeLining,
    depthFromFaceMm: surface.depthFromFaceMm,
    depthFromStructureMm: surface.depthFromStructureMm,
    areaLostM2: surface.areaLostM2,
    clearLengthMm: surface.kind === 'wall' ? surface.clearLengthMm : null,
    swallowed: surface.swallowed,
    soundAreaM2: surface.soundAreaM2,
    addedMassKgM2: surface.addedMassKgM2,
    stc: rating?.stc ?? null,
    stcNo8dbRule: rating?.stcNo8dbRule ?? null,
    rw: rating?.rw ?? null,
    c: rating?.c ?? null,
    ctr: rating?.ctr ?? null,
    c50: rating?.evidence.c50.value ?? null,
    ctr50: rating?.evidence.ctr50.value ?? null,
    oitc: rating?.evidence.oitc.value ?? null,
    physicsStc: rating?.physicsStc ?? null,
    plusMinus95: rating?.plusMinus95 ?? null,
    published: rating && publishedStc(rating.published),
    resonances: rating?.prediction.resonances ?? [],
    notes: surface.notes,
  }
}

/** All schemes of the first room, in the project's order; `rooms` with those of every room where there are several. */
export function projectReport(rooms: readonly RoomResults[]) {
  const schemes = (one: RoomResults) => one.results.map((result, i) => schemeReport(result, one.room, heardIn(one, i)))
  return {
    schemes: rooms.slice(0, 1).flatMap(schemes),
    ...(rooms.length > 1
      ? { rooms: rooms.map((one) => ({ id: one.room.id, name: one.room.name, schemes: schemes(one) })) }
      : {}),
  }
}

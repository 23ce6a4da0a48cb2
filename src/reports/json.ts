import { publishedStc } from '#analysis/published.ts'
import type { SchemeResult, SurfaceResult } from '#analysis/results.ts'

/** One scheme as the command line's JSON says it; unknown numbers are null and a note says why. */
export function schemeReport(result: SchemeResult) {
  const { ledger } = result
  return {
    name: result.name,
    floorAreaM2: ledger.floorAreaM2,
    keptPercent: ledger.keptPercent,
    clearSizeMm: ledger.clearSizeMm,
    clearHeightMm: ledger.clearHeightMm,
    drops: ledger.drops,
    volumeM3: ledger.volumeM3,
    largestCircleMm: ledger.largestCircleMm,
    parts: ledger.parts,
    addedMassKg: ledger.addedMassKg,
    onJoistsKgM2: ledger.onJoistsKgM2,
    surfaces: result.surfaces.map(surfaceReport),
    notes: [{ code: 'surfaces-only', text: SURFACES_ONLY }],
    cautions: result.cautions.map(({ code, kind, text, surfaces }) => ({ code, kind, text, surfaces })),
  }
}

/** Said beside every rating until the paths through openings are in the sum. */
export const SURFACES_ONLY =
  'Each rating is of one surface alone: doors, windows, leaks, ventilation and flanking are not in these figures.'

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

/** All schemes, in the project's order. */
export function projectReport(results: readonly SchemeResult[]) {
  return { schemes: results.map(schemeReport) }
}

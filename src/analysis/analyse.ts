import { cautionsFor } from '#analysis/cautions.ts'
import { cornersAsBuilt } from '#analysis/corners/cornersAsBuilt.ts'
import { depthsOf } from '#analysis/depths.ts'
import { checkFurniture } from '#analysis/furniture/checkFurniture.ts'
import { meanHeight } from '#analysis/heights.ts'
import { clearHeight, type HeightsTaken, ledgerOf } from '#analysis/ledger.ts'
import { checkOpenings } from '#analysis/openings/checkOpenings.ts'
import type { HeightField, SchemeResult, SurfaceResult } from '#analysis/results.ts'
import type { Room, SurfaceFacts, Wall } from '#analysis/room.ts'
import { choiceFor, type Scheme } from '#analysis/scheme.ts'
import { describeSurface } from '#analysis/surfaces.ts'
import type { Assembly, Catalogue } from '#assemblies/assembly.ts'
import { type Inset, type InsetRefusal, insetRoom } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'
import { ok, type Result } from '#units/result.ts'

export interface AnalysisInput {
  readonly room: Room
  readonly scheme: Scheme
  readonly catalogue: Catalogue
  /** drag: coarser frequency steps while a hand moves; plot: as reported. */
  readonly quality: 'drag' | 'plot'
}

/** A scheme's results, or why its geometry was refused. */
export type SchemeAnalysis = Result<SchemeResult, InsetRefusal>

/** Computes what a scheme leaves of a room and how each of its surfaces isolates. */
export function analyseScheme(input: AnalysisInput): SchemeAnalysis {
  const { room, scheme } = input
  const inset = insetRoom({
    outline: room.corners.map((corner): Point => [corner.xMm, corner.yMm]),
    depthsMm: room.walls.map((wall) => netDepth(input, wall)),
    obstacles: room.obstacles.map((obstacle) => ({
      outline: obstacle.corners.map((corner): Point => [corner.xMm, corner.yMm]),
      depthsMm: obstacle.corners.map(() => obstacle.liningMm),
    })),
  })
  if (!inset.ok) return inset
  const clear = [...inset.value.clear].sort((a, b) => b.areaMm2 - a.areaMm2)
  const sorted: Inset = { ...inset.value, clear }
  const taken: HeightsTaken = {
    ceilingTakes: netDepth(input, room.ceiling),
    floorTakes: netDepth(input, room.floor),
  }
  const surfaces = allSurfaces(input, sorted, clearHeight(room, taken))
  const ledger = ledgerOf(room, sorted, surfaces, taken, assemblyOf(input, room.ceiling))
  const heights: HeightField = { patches: [], worstMissMm: 0 }
  const openings = checkOpenings(input, { inset: sorted, clear, surfaces, ledger, heights })
  const result = {
    schemeId: scheme.id,
    name: scheme.name,
    inset: sorted,
    clear,
    ledger,
    surfaces,
    heights,
    openings,
    furniture: checkFurniture(input, { clear, heights, openings }),
    corners: cornersAsBuilt(input, { surfaces }),
    lowestRated: lowestRated(surfaces),
  }
  return ok({ ...result, cautions: cautionsFor(input, result) })
}

function assemblyOf(input: AnalysisInput, facts: SurfaceFacts): Assembly | null {
  return input.catalogue.assemblies.get(choiceFor(input.scheme, facts.id).assembly) ?? null
}

function netDepth(input: AnalysisInput, facts: SurfaceFacts): number {
  return depthsOf(facts, choiceFor(input.scheme, facts.id), assemblyOf(input, facts)).net
}

function allSurfaces(input: AnalysisInput, inset: Inset, height: number): readonly SurfaceResult[] {
  const { room } = input
  const clearM2 = inset.clear.reduce((sum, part) => sum + part.areaMm2, 0) / 1e6
  return [
    ...room.walls.map((wall, index) => wallResult(input, inset, wall, index, Math.max(0, height))),
    flatResult(input, 'ceiling', inset.outlineMm2 / 1e6, clearM2),
    flatResult(input, 'floor', inset.outlineMm2 / 1e6, clearM2),
  ]
}

function wallResult(input: AnalysisInput, inset: Inset, wall: Wall, index: number, height: number): SurfaceResult {
  const described = describeSurface({
    ...input,
    facts: wall,
    kind: 'wall',
    label: `Wall ${index + 1}`,
    choice: choiceFor(input.scheme, wall.id),
  })
  const onPlan = inset.walls.find((entry) => entry.wall === index)
  const clearLengthMm = onPlan?.clearLengthMm ?? 0
  return {
    ...described,
    areaLostM2: ((onPlan?.areaMm2 ?? 0) - gainedBy(input.room, index, described.netDepthMm)) / 1e6,
    clearLengthMm,
    swallowed: onPlan?.swallowed ?? false,
    soundAreaM2: wallSoundArea(input.room, wall, index),
    addedMassKg: (described.addedMassKgM2 * clearLengthMm * height) / 1e6,
  }
}

/** What a face that moves outward adds along its wall, mm2; the pieces at corners where two move are in the ledger only. */
function gainedBy(room: Room, index: number, netDepth: number): number {
  return Math.max(0, -netDepth) * wallLength(room, index)
}

function wallLength(room: Room, index: number): number {
  const from = room.corners[index]
  const to = room.corners[(index + 1) % room.corners.length]
  return from && to ? Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) : 0
}

/** Existing length times mean existing height, less the openings in it, m2. */
function wallSoundArea(room: Room, wall: Wall, index: number): number {
  const gross = wallLength(room, index) * meanHeight(room)
  const openings = room.openings.filter((opening) => opening.wall === wall.id)
  return Math.max(0, gross - openings.reduce((sum, opening) => sum + opening.widthMm * opening.heightMm, 0)) / 1e6
}

function flatResult(
  input: AnalysisInput,
  kind: 'ceiling' | 'floor',
  soundAreaM2: number,
  clearM2: number,
): SurfaceResult {
  const facts = input.room[kind]
  const described = describeSurface({
    ...input,
    facts,
    kind,
    label: kind === 'ceiling' ? 'Ceiling' : 'Floor',
    choice: choiceFor(input.scheme, facts.id),
  })
  return {
    ...described,
    areaLostM2: 0,
    clearLengthMm: 0,
    swallowed: false,
    soundAreaM2,
    addedMassKg: described.addedMassKgM2 * clearM2,
  }
}

function lowestRated(surfaces: readonly SurfaceResult[]): SchemeResult['lowestRated'] {
  let lowest: SchemeResult['lowestRated'] = null
  for (const { id, rating } of surfaces) {
    if (rating && (lowest === null || rating.stc < lowest.stc)) lowest = { surfaceId: id, stc: rating.stc }
  }
  return lowest
}

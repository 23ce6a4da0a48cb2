import { checkBoxes } from '#analysis/boxes/checkBoxes.ts'
import { besideBoxes, boxesIn, underBoxes } from '#analysis/boxes/placed.ts'
import { cautionsFor } from '#analysis/cautions.ts'
import { cornersAsBuilt } from '#analysis/corners/cornersAsBuilt.ts'
import { checkFurniture } from '#analysis/furniture/checkFurniture.ts'
import { type Between, meanHeightAlong } from '#analysis/heights/along.ts'
import { type ExistingSpace, existingSpace } from '#analysis/heights/existing.ts'
import { facesOf, netDepth, outlineOf } from '#analysis/heights/faces.ts'
import { type ClearSpace, clearSpace } from '#analysis/heights/field.ts'
import { steepness } from '#analysis/heights/plane.ts'
import { countedToWalls, liningsInFront } from '#analysis/inFront.ts'
import { ledgerOf, sumAreas } from '#analysis/ledger.ts'
import { checkOpenings } from '#analysis/openings/checkOpenings.ts'
import type { SchemeResult, SurfaceResult } from '#analysis/results.ts'
import type { Opening, Room, SurfaceFacts, Wall } from '#analysis/room.ts'
import { choiceFor, type Scheme } from '#analysis/scheme.ts'
import { describeSurface } from '#analysis/surfaces.ts'
import { roomUnder } from '#analysis/takenOut.ts'
import type { Assembly, Catalogue } from '#assemblies/assembly.ts'
import { type Inset, type InsetRefusal, insetRoom } from '#geometry/inset/insetRoom.ts'
import { isCounterClockwise } from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import { ok, type Result } from '#units/result.ts'

export interface AnalysisInput {
  readonly room: Room
  readonly scheme: Scheme
  readonly catalogue: Catalogue
  /** drag: coarser frequency steps while a hand moves; plot: as reported. */
  readonly quality: 'drag' | 'plot'
  /** By wall, what the scheme builds on the other face of those that two rooms share; absent: nothing anywhere. */
  readonly beyond?: ReadonlyMap<string, Assembly> | undefined
}

/** A scheme's results, or why its geometry was refused. */
export type SchemeAnalysis = Result<SchemeResult, InsetRefusal>

/** Computes what a scheme leaves of a room and how each of its surfaces isolates. */
export function analyseScheme(given: AnalysisInput): SchemeAnalysis {
  const { scheme } = given
  const room = roomUnder(given.room, scheme)
  const input: AnalysisInput = { ...given, room }
  const inset = linedPlan(input)
  if (!inset.ok) return inset
  const lined = [...inset.value.clear].sort((a, b) => b.areaMm2 - a.areaMm2)
  const sorted: Inset = { ...inset.value, clear: lined }
  const faces = facesOf(input)
  const existing = existingSpace(room, faces.levels)
  const withoutBoxes = clearSpace(room, faces, lined)
  const surfaces = allSurfaces(input, sorted, existing, withoutBoxes)
  const boxes = boxesIn(room, scheme)
  const under = underBoxes(room, faces, boxes)
  const clear = besideBoxes(lined, boxes)
  const space = boxes.length > 0 ? clearSpace(under, faces, clear) : withoutBoxes
  const ceilingAssembly = assemblyOf(input, room.ceiling)
  const takes = { room: under, inset: sorted, surfaces, existing, clear, space, boxes, withoutBoxes, ceilingAssembly }
  const ledger = ledgerOf(takes)
  const heights = space.field
  const known = { inset: sorted, clear: lined, surfaces, ledger, heights }
  const openings = checkOpenings({ ...input, room: under }, known)
  const result = {
    schemeId: scheme.id,
    name: scheme.name,
    inset: sorted,
    clear,
    ledger,
    surfaces,
    heights,
    openings,
    furniture: checkFurniture({ ...input, room: under }, { ...known, openings }, boxes),
    boxes: checkBoxes(input, boxes, { ...known, openings, patches: withoutBoxes.field.patches }),
    corners: cornersAsBuilt(input, { surfaces }),
    takenOut: scheme.takenOut,
    lowestRated: lowestRated(surfaces),
  }
  return ok({ ...result, cautions: cautionsFor(given, result) })
}

/** The plan with every lining in it; obstacles are boxed all round, or covered where a wall's lining is deeper. */
function linedPlan(input: AnalysisInput): Result<Inset, InsetRefusal> {
  const { room } = input
  const depthsMm = room.walls.map((wall) => netDepth(input, wall))
  const inFront = liningsInFront(room, depthsMm)
  let edge = room.walls.length
  const inset = insetRoom({
    outline: outlineOf(room),
    depthsMm,
    obstacles: room.obstacles.map(({ corners, liningMm }) => {
      const first = edge
      edge += corners.length
      return {
        outline: corners.map((corner): Point => [corner.xMm, corner.yMm]),
        depthsMm: corners.map((_, k) => inFront.find((side) => side.edge === first + k)?.depthMm ?? liningMm),
      }
    }),
  })
  return inset.ok ? ok(countedToWalls(inset.value, inFront, room)) : inset
}

function assemblyOf(input: AnalysisInput, facts: SurfaceFacts): Assembly | null {
  return input.catalogue.assemblies.get(choiceFor(input.scheme, facts.id).assembly) ?? null
}

function allSurfaces(
  input: AnalysisInput,
  inset: Inset,
  existing: ExistingSpace,
  space: ClearSpace,
): readonly SurfaceResult[] {
  const { room } = input
  const clearMm2 = sumAreas(inset.clear)
  const ceilingMm2 = space.ceilings.reduce((sum, { plan, ceiling }) => sum + sumAreas(plan) * steepness(ceiling), 0)
  const walls = wallSetting(input.room, inset, existing.between, space.faces)
  return [
    ...room.walls.map((wall, index) => wallResult(input, wall, index, walls)),
    flatResult(input, 'ceiling', existing.ceilingM2, ceilingMm2 / 1e6),
    flatResult(input, 'floor', existing.floorM2, (clearMm2 * steepness(space.faces.floor)) / 1e6),
  ]
}

/** What every wall's figures are read from, looked up once for all of them. */
interface WallSetting {
  /** Heights as they stand along the outline, and in the clear room. */
  readonly existing: Between
  readonly clear: Between
  /** Ends of every wall, the room on the left. */
  readonly ends: readonly (readonly [Point, Point])[]
  readonly onPlan: ReadonlyMap<number, Inset['walls'][number]>
  readonly openings: ReadonlyMap<string, readonly Opening[]>
}

function wallSetting(room: Room, inset: Inset, existing: Between, clear: Between): WallSetting {
  const outline = outlineOf(room)
  const isLeft = isCounterClockwise(outline)
  const openings = new Map<string, Opening[]>()
  for (const opening of room.openings) {
    openings.set(opening.wall, [...(openings.get(opening.wall) ?? []), opening])
  }
  return {
    existing,
    clear,
    ends: outline.map((from, index) => {
      const to = outline[(index + 1) % outline.length] ?? from
      return isLeft ? [from, to] : [to, from]
    }),
    onPlan: new Map(inset.walls.map((entry) => [entry.wall, entry])),
    openings,
  }
}

function wallResult(input: AnalysisInput, wall: Wall, index: number, walls: WallSetting): SurfaceResult {
  const described = describeSurface({
    ...input,
    facts: wall,
    kind: 'wall',
    label: `Wall ${index + 1}`,
    choice: choiceFor(input.scheme, wall.id),
    beyond: input.beyond?.get(wall.id),
  })
  const onPlan = walls.onPlan.get(index)
  return asBefore(described, {
    areaLostM2: ((onPlan?.areaMm2 ?? 0) - gainedBy(input.room, index, described.netDepthMm)) / 1e6,
    clearLengthMm: onPlan?.clearLengthMm ?? 0,
    swallowed: onPlan?.swallowed ?? false,
    soundAreaM2: wallSoundArea(input.room, wall, index, walls),
    addedMassKg: (described.addedMassKgM2 * linedMm2(onPlan, walls.clear)) / 1e6,
  })
}

/** What of a wall's result follows from where it stands. */
type Measured = Pick<SurfaceResult, 'areaLostM2' | 'clearLengthMm' | 'swallowed' | 'soundAreaM2' | 'addedMassKg'>
type Described = ReturnType<typeof describeSurface>

const lastResults = new WeakMap<Described, SurfaceResult>()

/** The very result given before where nothing of it changed: a hand moves two walls of two hundred. */
function asBefore(described: Described, measured: Measured): SurfaceResult {
  const last = lastResults.get(described)
  if (
    last?.areaLostM2 === measured.areaLostM2 &&
    last.clearLengthMm === measured.clearLengthMm &&
    last.swallowed === measured.swallowed &&
    last.soundAreaM2 === measured.soundAreaM2 &&
    last.addedMassKg === measured.addedMassKg
  ) {
    return last
  }
  const result = { ...described, ...measured }
  lastResults.set(described, result)
  return result
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

/** Face of a wall in the clear room, mm2: its pieces, each with its own mean height. */
function linedMm2(onPlan: Inset['walls'][number] | undefined, clear: Between): number {
  return (onPlan?.sections ?? []).reduce((sum, { from, to }) => {
    return sum + Math.hypot(to[0] - from[0], to[1] - from[1]) * meanHeightAlong(from, to, clear)
  }, 0)
}

/** Existing length times its own mean existing height, less the openings in it, m2. */
function wallSoundArea(room: Room, wall: Wall, index: number, { ends, existing, openings }: WallSetting): number {
  const [from, to] = ends[index] ?? []
  if (!from || !to) return 0
  const gross = wallLength(room, index) * meanHeightAlong(from, to, existing)
  const taken = (openings.get(wall.id) ?? []).reduce((sum, opening) => sum + openingMm2(opening), 0)
  return Math.max(0, gross - taken) / 1e6
}

function openingMm2({ kind, shape, widthMm, heightMm }: Opening): number {
  return kind === 'vent' && shape === 'round' ? (Math.PI / 4) * widthMm ** 2 : widthMm * heightMm
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
    beyond: undefined,
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

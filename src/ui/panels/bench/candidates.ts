import { bandIndex } from '#acoustics/bands.ts'
import type { SurfaceResult } from '#analysis/results.ts'
import type { Room, SurfaceFacts } from '#analysis/room.ts'
import { describeSurface } from '#analysis/surfaces.ts'
import { AS_IS, type Assembly, type Catalogue, type SurfaceKind } from '#assemblies/assembly.ts'
import { assembliesFor, isBuildable } from '#assemblies/catalogue.ts'
import { layersDepth } from '#assemblies/layer.ts'
import { isOwn } from '#assemblies/ownAssembly.ts'
import { likelyHalf } from '#ui/charts/likely.ts'
import type { Decibels, Millimetres } from '#units/quantity.ts'

/** What a surface could be: one assembly, or as it stands. */
export interface Candidate {
  /** Catalogue id, or as-is. */
  readonly id: string
  /** null: as it stands. */
  readonly assembly: Assembly | null
  readonly shortName: string
  readonly name: string
  /** Built by the user of the project. */
  readonly isOwn: boolean
  readonly described: Pick<
    SurfaceResult,
    'label' | 'layers' | 'existingLayerCount' | 'rating' | 'notes' | 'depthFromFaceMm' | 'depthFromStructureMm'
  >
}

/** What quiet means on the ruler. */
export type Measure = 'margin' | 'stc' | 'loss63' | 'loss125'

/** The line depths are counted from. */
export type Face = 'finished-face' | 'structure'

/** A surface with what it is called and what can be fixed to it. */
export interface BenchSurface {
  readonly facts: SurfaceFacts
  readonly kind: SurfaceKind
  readonly label: string
  /** Built on its other face by the same scheme, where two rooms share it. */
  readonly beyond?: Assembly | undefined
}

export function benchSurfaces(room: Room): readonly BenchSurface[] {
  return [
    ...room.walls.map((facts, index): BenchSurface => ({ facts, kind: 'wall', label: `Wall ${index + 1}` })),
    { facts: room.ceiling, kind: 'ceiling', label: 'Ceiling' },
    { facts: room.floor, kind: 'floor', label: 'Floor' },
  ]
}

/** Assemblies that can be built against every one of these surfaces, least depth first. */
export function sharedAssemblies(surfaces: readonly BenchSurface[], catalogue: Catalogue): readonly Assembly[] {
  const stands = surfaces.flatMap(({ facts, kind }) => {
    const structure = catalogue.existing.get(facts.existing)?.structure
    return structure === undefined ? [] : [{ kind, structure }]
  })
  const listed = new Map(
    stands.flatMap(({ kind, structure }) =>
      assembliesFor(kind, structure, catalogue).map((assembly) => [assembly.id, assembly] as const),
    ),
  )
  return [...listed.values()]
    .filter((assembly) =>
      stands.every(({ kind, structure }) => assembly.surface === kind && isBuildable(assembly, structure)),
    )
    .sort((a, b) => layersDepth(a.layers) - layersDepth(b.layers))
}

/** What was computed with an assembly as it then was: an own one can change under the same id. */
interface Remembered {
  readonly assembly: Assembly | undefined
  readonly beyond: Assembly | undefined
  readonly described: Candidate['described']
}

const remembered = new WeakMap<SurfaceFacts, Map<string, Remembered>>()

/** A surface's build-up and rating with an assembly, remembered as long as its facts and the assembly are the same. */
export function describeCandidate(
  surface: BenchSurface,
  assemblyId: string,
  removeLining: boolean,
  catalogue: Catalogue,
): Candidate['described'] {
  const known = remembered.get(surface.facts) ?? new Map<string, Remembered>()
  remembered.set(surface.facts, known)
  const key = `${assemblyId} ${removeLining} ${surface.label}`
  const assembly = catalogue.assemblies.get(assemblyId)
  const former = known.get(key)
  if (former && former.assembly === assembly && former.beyond === surface.beyond) return former.described
  const described = describeSurface({
    ...surface,
    choice: { assembly: assemblyId, removeLining },
    catalogue,
    quality: 'plot',
  })
  known.set(key, { assembly, beyond: surface.beyond, described })
  return described
}

/** As it stands, then everything that can be built here, each with its depth and rating on the first surface. */
export function candidatesFor(
  surface: BenchSurface,
  assemblies: readonly Assembly[],
  removeLining: boolean,
  catalogue: Catalogue,
): readonly Candidate[] {
  const asIs: Candidate = {
    id: AS_IS,
    assembly: null,
    shortName: removeLining ? 'lining off' : 'as it stands',
    name: removeLining ? 'Lining removed, nothing built' : 'As it stands',
    isOwn: false,
    described: describeCandidate(surface, AS_IS, removeLining, catalogue),
  }
  return [
    asIs,
    ...assemblies.map((assembly) => ({
      id: assembly.id,
      assembly,
      shortName: assembly.shortName,
      name: assembly.name,
      isOwn: isOwn(catalogue, assembly.id),
      described: describeCandidate(surface, assembly.id, removeLining, catalogue),
    })),
  ]
}

export function depthFrom({ described }: Candidate, face: Face): Millimetres {
  return face === 'structure' ? described.depthFromStructureMm : described.depthFromFaceMm
}

/** A value on the ruler with its likely range. */
export interface Quiet {
  readonly value: Decibels
  readonly low: Decibels
  readonly high: Decibels
}

/**
 * How quiet a candidate is by the chosen measure; null: not rated, or its margin is not known.
 * @param margins  of the shown receiver, by candidate; needed for the margin only
 */
export function quietOf(
  { id, described }: Candidate,
  measure: Measure,
  margins?: ReadonlyMap<string, Quiet> | undefined,
): Quiet | null {
  if (measure === 'margin') return margins?.get(id) ?? null
  const { rating } = described
  if (rating === null) return null
  if (measure === 'stc') return { value: rating.stc, low: rating.likely[0], high: rating.likely[1] }
  const band = bandIndex(measure === 'loss63' ? 63 : 125)
  const value = rating.prediction.lossDb[band]!
  const half = likelyHalf(rating.prediction.spreadBandDb[band]!)
  return { value, low: value - half, high: value + half }
}

export const MEASURE_WORDS: Readonly<Record<Measure, string>> = {
  margin: 'margin in dB',
  stc: 'STC',
  loss63: 'dB at 63 Hz',
  loss125: 'dB at 125 Hz',
}

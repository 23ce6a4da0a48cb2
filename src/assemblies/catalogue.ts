import type { Assembly, Catalogue, ExistingConstruction, SurfaceKind } from '#assemblies/assembly.ts'
import C01 from '#assemblies/catalogue/C01.json' with { type: 'json' }
import C02 from '#assemblies/catalogue/C02.json' with { type: 'json' }
import C03 from '#assemblies/catalogue/C03.json' with { type: 'json' }
import C04 from '#assemblies/catalogue/C04.json' with { type: 'json' }
import C05 from '#assemblies/catalogue/C05.json' with { type: 'json' }
import C06 from '#assemblies/catalogue/C06.json' with { type: 'json' }
import C07 from '#assemblies/catalogue/C07.json' with { type: 'json' }
import C08 from '#assemblies/catalogue/C08.json' with { type: 'json' }
import C09 from '#assemblies/catalogue/C09.json' with { type: 'json' }
import C10 from '#assemblies/catalogue/C10.json' with { type: 'json' }
import C11 from '#assemblies/catalogue/C11.json' with { type: 'json' }
import F01 from '#assemblies/catalogue/F01.json' with { type: 'json' }
import F02 from '#assemblies/catalogue/F02.json' with { type: 'json' }
import F03 from '#assemblies/catalogue/F03.json' with { type: 'json' }
import F04 from '#assemblies/catalogue/F04.json' with { type: 'json' }
import F05 from '#assemblies/catalogue/F05.json' with { type: 'json' }
import W01 from '#assemblies/catalogue/W01.json' with { type: 'json' }
import W02 from '#assemblies/catalogue/W02.json' with { type: 'json' }
import W03 from '#assemblies/catalogue/W03.json' with { type: 'json' }
import W04 from '#assemblies/catalogue/W04.json' with { type: 'json' }
import W06 from '#assemblies/catalogue/W06.json' with { type: 'json' }
import W07 from '#assemblies/catalogue/W07.json' with { type: 'json' }
import W08 from '#assemblies/catalogue/W08.json' with { type: 'json' }
import W09 from '#assemblies/catalogue/W09.json' with { type: 'json' }
import W10 from '#assemblies/catalogue/W10.json' with { type: 'json' }
import W12 from '#assemblies/catalogue/W12.json' with { type: 'json' }
import W13 from '#assemblies/catalogue/W13.json' with { type: 'json' }
import W14 from '#assemblies/catalogue/W14.json' with { type: 'json' }
import W15 from '#assemblies/catalogue/W15.json' with { type: 'json' }
import W16 from '#assemblies/catalogue/W16.json' with { type: 'json' }
import W19 from '#assemblies/catalogue/W19.json' with { type: 'json' }
import W20 from '#assemblies/catalogue/W20.json' with { type: 'json' }
import W21 from '#assemblies/catalogue/W21.json' with { type: 'json' }
import W22 from '#assemblies/catalogue/W22.json' with { type: 'json' }
import blockDense100 from '#assemblies/existing/block-dense-100.json' with { type: 'json' }
import blockHollow190 from '#assemblies/existing/block-hollow-190.json' with { type: 'json' }
import brick102 from '#assemblies/existing/brick-102.json' with { type: 'json' }
import brick215 from '#assemblies/existing/brick-215.json' with { type: 'json' }
import concrete150 from '#assemblies/existing/concrete-150.json' with { type: 'json' }
import concrete203 from '#assemblies/existing/concrete-203.json' with { type: 'json' }
import concreteSlabAbove150 from '#assemblies/existing/concrete-slab-above-150.json' with { type: 'json' }
import concreteSlabSuspended150 from '#assemblies/existing/concrete-slab-suspended-150.json' with { type: 'json' }
import joist2x10Floor from '#assemblies/existing/joist-2x10-floor.json' with { type: 'json' }
import joist2x10Subfloor from '#assemblies/existing/joist-2x10-subfloor.json' with { type: 'json' }
import joist2x10SubfloorNeighbour from '#assemblies/existing/joist-2x10-subfloor-neighbour.json' with { type: 'json' }
import joist47x97FeltRoof from '#assemblies/existing/joist-47x97-felt-roof.json' with { type: 'json' }
import party2x4TwoRows from '#assemblies/existing/party-2x4-two-rows.json' with { type: 'json' }
import slabOnGround from '#assemblies/existing/slab-on-ground.json' with { type: 'json' }
import steelStudBoardFarSide from '#assemblies/existing/steel-stud-board-far-side.json' with { type: 'json' }
import stud2x4BoardFarSide from '#assemblies/existing/stud-2x4-board-far-side.json' with { type: 'json' }
import stud2x4BrickVeneer from '#assemblies/existing/stud-2x4-brick-veneer.json' with { type: 'json' }
import stud2x4OsbSiding from '#assemblies/existing/stud-2x4-osb-siding.json' with { type: 'json' }
import stud2x6OsbSiding from '#assemblies/existing/stud-2x6-osb-siding.json' with { type: 'json' }
import trussOsbShingles from '#assemblies/existing/truss-osb-shingles.json' with { type: 'json' }
import { layersDepth } from '#assemblies/layer.ts'
import { OPENING_TYPES } from '#assemblies/openingTypes.ts'
import { isOwn } from '#assemblies/ownAssembly.ts'
import { assemblySchema, existingConstructionSchema } from '#assemblies/schema.ts'
import { invariant } from '#units/result.ts'

/** Walls, then ceilings, then floors, each from little depth to much. */
const ASSEMBLY_FILES: readonly unknown[] = [
  W01,
  W02,
  W03,
  W04,
  W06,
  W07,
  W08,
  W09,
  W10,
  W12,
  W13,
  W14,
  W15,
  W16,
  W19,
  W20,
  W21,
  W22,
  C01,
  C02,
  C03,
  C04,
  C05,
  C06,
  C07,
  C08,
  C09,
  C10,
  C11,
  F01,
  F02,
  F03,
  F04,
  F05,
]

/** Walls, then ceilings, then floors. */
const EXISTING_FILES: readonly unknown[] = [
  stud2x4OsbSiding,
  stud2x6OsbSiding,
  stud2x4BrickVeneer,
  stud2x4BoardFarSide,
  party2x4TwoRows,
  steelStudBoardFarSide,
  concrete203,
  concrete150,
  blockHollow190,
  blockDense100,
  brick102,
  brick215,
  joist2x10Subfloor,
  joist2x10SubfloorNeighbour,
  trussOsbShingles,
  concreteSlabAbove150,
  joist47x97FeltRoof,
  slabOnGround,
  joist2x10Floor,
  concreteSlabSuspended150,
]

let built: Catalogue | undefined

/** Every built-in assembly and existing construction; checked against the schema once, then kept. */
export function builtInCatalogue(): Catalogue {
  built ??= {
    assemblies: byId(ASSEMBLY_FILES.map((file) => assemblySchema.parse(file))),
    existing: byId(EXISTING_FILES.map((file) => existingConstructionSchema.parse(file))),
    openingTypes: byId(OPENING_TYPES),
  }
  return built
}

function byId<Entry extends { readonly id: string }>(entries: readonly Entry[]): ReadonlyMap<string, Entry> {
  const map = new Map(entries.map((entry) => [entry.id, entry]))
  invariant(map.size === entries.length, 'every catalogue entry has an id of its own')
  return map
}

/**
 * Assemblies that can be built against this surface and structure, least depth first.
 * Where two built-in ones are the same layer by layer, the one made for this very structure stays; an own one always does.
 */
export function assembliesFor(
  surface: SurfaceKind,
  structure: ExistingConstruction['structure'],
  catalogue: Catalogue,
): readonly Assembly[] {
  const allowed = [...catalogue.assemblies.values()].filter(
    (assembly) => assembly.surface === surface && isBuildable(assembly, structure),
  )
  const particular = allowed.filter((assembly) => !standsAnywhere(assembly) && !isOwn(catalogue, assembly.id))
  return allowed
    .filter(
      (assembly) =>
        isOwn(catalogue, assembly.id) ||
        !standsAnywhere(assembly) ||
        !particular.some((other) => sameLayers(other, assembly)),
    )
    .toSorted((a, b) => layersDepth(a.layers) - layersDepth(b.layers))
}

/** False where the assembly has nothing to be fixed to on that structure, or no room in its bays. */
export function isBuildable(assembly: Assembly, structure: ExistingConstruction['structure']): boolean {
  if (assembly.nestedInBays && structure === 'truss') return false
  return standsAnywhere(assembly) || isFixableTo(assembly, structure)
}

function standsAnywhere(assembly: Assembly): boolean {
  return assembly.fixedTo === 'independent' || assembly.fixedTo === 'any'
}

function isFixableTo(assembly: Assembly, structure: ExistingConstruction['structure']): boolean {
  switch (structure) {
    case 'wood-frame':
    case 'steel-frame':
    case 'truss':
      return assembly.fixedTo === 'frame' || assembly.fixedTo === 'frame-or-lining'
    case 'masonry':
      return assembly.fixedTo === 'masonry'
    case 'slab':
      return assembly.fixedTo === 'slab' || assembly.fixedTo === 'masonry'
  }
}

function sameLayers(a: Assembly, b: Assembly): boolean {
  return JSON.stringify(a.layers) === JSON.stringify(b.layers)
}

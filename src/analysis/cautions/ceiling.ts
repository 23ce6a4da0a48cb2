import type { AnalysisInput } from '#analysis/analyse.ts'
import { bothSurfaceMasses } from '#analysis/cautions/words.ts'
import limits from '#analysis/data/limits.json'
import type { Caution, SchemeResult, SurfaceResult } from '#analysis/results.ts'
import { choiceFor } from '#analysis/scheme.ts'
import type { Assembly } from '#assemblies/assembly.ts'

type Result = Omit<SchemeResult, 'cautions'>

/** Loads on joists, walls that must carry a ceiling, trusses, and heavy walls and floors. */
export function ceilingCautions(input: AnalysisInput, result: Result): readonly Caution[] {
  const { room, scheme, catalogue } = input
  const assembly = catalogue.assemblies.get(choiceFor(scheme, room.ceiling.id).assembly)
  const structure = catalogue.existing.get(room.ceiling.existing)?.structure
  return [
    ...(assembly ? ceilingLoad(room.ceiling.id, assembly, result, structure === 'truss') : []),
    ...(assembly && !assembly.loadsExistingJoists ? bearingWalls(input) : []),
    ...(assembly?.nestedInBays && structure === 'truss' ? [nestedUnderTrusses(room.ceiling.id)] : []),
    ...heavySurfaces(result.surfaces, input),
  ]
}

/** True for a lining with a frame of its own, which can carry a ceiling if it is sized for it. */
function standsAlone(assembly: Assembly | undefined): boolean {
  return (assembly?.layers ?? []).some(
    (layer) => layer.kind === 'cavity' && layer.link.kind === 'none' && layer.frame !== undefined,
  )
}

function nestedUnderTrusses(id: string): Caution {
  const text =
    'Joists nested between trusses cannot be built: the webs are in the way and must not be cut. Choose a ceiling below the bottom chords.'
  return { code: 'nested-under-trusses', kind: 'life-safety', text, surfaces: [id] }
}

function ceilingLoad(id: string, assembly: Assembly, result: Result, truss: boolean): readonly Caution[] {
  if (!assembly.loadsExistingJoists) return []
  const mass = bothSurfaceMasses(result.surfaces.find((surface) => surface.id === id)?.addedMassKgM2 ?? 0)
  const text = truss
    ? `The ceiling adds ${mass} to the trusses: their bottom chords are often designed for little or no load, so have the truss designer or a structural engineer confirm it in writing; trusses must not be cut.`
    : `The ceiling adds ${mass} to the joists above: have them checked by a structural engineer, and compare the load on each clip or hanger with the maker's tested load.`
  return [{ code: 'ceiling-load', kind: 'life-safety', text, surfaces: [id] }]
}

function bearingWalls({ room, scheme, catalogue }: AnalysisInput): readonly Caution[] {
  const bearing = room.walls.some((wall) => standsAlone(catalogue.assemblies.get(choiceFor(scheme, wall.id).assembly)))
  const id = room.ceiling.id
  const carried: Caution = {
    code: 'ceiling-on-walls',
    kind: 'life-safety',
    text: 'The new ceiling joists bear on the new inner walls only: size the joists and those walls by span table or by a structural engineer, and leave the gap above open after they have sagged.',
    surfaces: [id],
  }
  if (bearing) return [carried]
  const missing: Caution = {
    code: 'ceiling-without-walls',
    kind: 'life-safety',
    text: 'The new ceiling joists need new inner walls to bear on, and no wall of this scheme has one: choose independent linings for the walls that carry them, or a ceiling that hangs from the existing joists.',
    surfaces: [id],
  }
  return [missing, carried]
}

function heavySurfaces(surfaces: readonly SurfaceResult[], { room, catalogue }: AnalysisInput): readonly Caution[] {
  return surfaces.flatMap((surface): Caution[] => {
    if (surface.kind === 'ceiling' || surface.assembly === 'as-is') return []
    const onFrame = surface.kind === 'floor' && catalogue.existing.get(room.floor.existing)?.structure === 'wood-frame'
    if (!onFrame && surface.addedMassKgM2 < limits.heavyWallKgM2.value) return []
    const text = `${surface.label} adds ${bothSurfaceMasses(surface.addedMassKgM2)}: have the floor or footing that carries it checked by a structural engineer.`
    return [{ code: 'heavy', kind: 'life-safety', text, surfaces: [surface.id] }]
  })
}

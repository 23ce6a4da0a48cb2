import { analyseScheme } from '#analysis/analyse.ts'
import type { Caution } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import { choiceFor, type Scheme } from '#analysis/scheme.ts'
import { describeSurface } from '#analysis/surfaces.ts'
import type { Assembly, Catalogue } from '#assemblies/assembly.ts'
import { withOwnAssemblies } from '#assemblies/ownAssembly.ts'
import { type AssemblyDraft, assemblyOf } from '#state/draft.ts'
import type { BenchSurface, Candidate } from '#ui/panels/bench/candidates.ts'

/** Names the assembly in the making while it is looked at; no file has it. */
export const DRAFT_ID = 'draft'

/** The existing construction in hand with the assembly in the making built against it. */
export function draftCandidate(
  surface: BenchSurface,
  draft: AssemblyDraft,
  removeLining: boolean,
  catalogue: Catalogue,
): Candidate & { readonly assembly: Assembly } {
  const assembly = assemblyOf(draft, DRAFT_ID)
  const described = describeSurface({
    ...surface,
    choice: { assembly: DRAFT_ID, removeLining },
    catalogue: withOwnAssemblies(catalogue, [assembly]),
    quality: 'plot',
  })
  const { name, shortName } = assembly
  return { id: DRAFT_ID, assembly, name, shortName, isOwn: true, described }
}

/** What must be settled before this assembly is built against these surfaces; nothing where the room cannot be computed. */
export function draftCautions(
  room: Room,
  scheme: Scheme,
  surfaceIds: readonly string[],
  assembly: Assembly,
  catalogue: Catalogue,
): readonly Caution[] {
  const chosen = surfaceIds.map((id) => [id, { ...choiceFor(scheme, id), assembly: assembly.id }] as const)
  const result = analyseScheme({
    room,
    scheme: { ...scheme, choices: { ...scheme.choices, ...Object.fromEntries(chosen) } },
    catalogue: withOwnAssemblies(catalogue, [assembly]),
    quality: 'drag',
  })
  if (!result.ok) return []
  return result.value.cautions.filter(({ surfaces }) => surfaces.some((id) => surfaceIds.includes(id)))
}

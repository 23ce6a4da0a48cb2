import type { Assembly, ExistingConstruction, Source, SurfaceKind } from '#assemblies/assembly.ts'
import type { Layer } from '#assemblies/layer.ts'
import { copyOfAssembly, OWN_SOURCE, type OwnAssemblyProblem, ownAssemblyProblems } from '#assemblies/ownAssembly.ts'

/** A layer in the making: its numbers may still be impossible. */
export interface DraftLayer {
  /** Stays the same while layers move. */
  readonly key: string
  readonly layer: Layer
  /** Where its numbers come from; null: typed by the user. */
  readonly source: Source | null
}

/** An assembly in the making: never saved by itself, so it may say anything. */
export interface AssemblyDraft extends Omit<Assembly, 'id' | 'layers' | 'layerSources' | 'source' | 'cautions'> {
  /** Id of the own assembly it changes; null: a new one. */
  readonly replaces: string | null
  /** Name of what it was copied from; null: begun from nothing. */
  readonly copiedFrom: string | null
  /** What whoever builds it must know, one a line. */
  readonly cautionLines: string
  readonly layers: readonly DraftLayer[]
  readonly nextKey: number
}

/** What is being built, step by step. */
export interface Building {
  readonly draft: AssemblyDraft
  /** The steps before, so that one can be taken back. */
  readonly former: readonly AssemblyDraft[]
  /** The last version that can be built; null: none yet. */
  readonly good: AssemblyDraft | null
  /** Texts that could not be read, by field: they stay as they were typed. */
  readonly unread: Readonly<Record<string, string>>
  /** Layer whose fields are open. */
  readonly openKey: string | null
}

/** Steps that can be taken back; older ones fall off. */
const MOST_STEPS = 200

/** Numbers that the user typed. */
export const TYPED_SOURCE: Source = { text: 'Typed by the user of this project.', status: 'derived' }

/** An assembly without layers, fixed as is usual on this structure. */
export function emptyDraft(
  surface: SurfaceKind,
  structure: ExistingConstruction['structure'],
  name: string,
): AssemblyDraft {
  return {
    replaces: null,
    copiedFrom: null,
    name,
    shortName: `new ${surface}`,
    surface,
    fixedTo: usualFixing(surface, structure),
    woolInOpenBays: surface !== 'floor',
    needsBareFrame: false,
    loadsExistingJoists: surface === 'ceiling',
    costBand: 3,
    cautionLines: '',
    layers: [],
    nextKey: 1,
  }
}

function usualFixing(surface: SurfaceKind, structure: ExistingConstruction['structure']): Assembly['fixedTo'] {
  if (surface === 'floor') return 'any'
  return structure === 'masonry' || structure === 'slab' ? 'masonry' : 'frame-or-lining'
}

/** A copy of an assembly under a name of its own, saved as a new one. */
export function copyDraft(assembly: Assembly, name: string): AssemblyDraft {
  return { ...draftOf(copyOfAssembly(assembly, assembly.id, name)), replaces: null, copiedFrom: assembly.name }
}

/** An own assembly opened for changing. */
export function draftOf(assembly: Assembly): AssemblyDraft {
  const { id, layers, layerSources, source: _, cautions, ...rest } = assembly
  return {
    ...rest,
    replaces: id,
    copiedFrom: null,
    cautionLines: cautions.join('\n'),
    layers: layers.map((layer, i) => ({ key: `layer-${i + 1}`, layer, source: layerSources?.[i] ?? null })),
    nextKey: layers.length + 1,
  }
}

/** The assembly a draft stands for. */
export function assemblyOf(draft: AssemblyDraft, id: string): Assembly {
  const { replaces: _, copiedFrom: __, nextKey: ___, cautionLines, layers, ...rest } = draft
  return {
    id,
    ...rest,
    needsBareFrame: rest.needsBareFrame || hangsOnBareFrame(draft),
    layers: layers.map(({ layer }) => layer),
    layerSources: layers.map(({ source }) => source ?? TYPED_SOURCE),
    cautions: cautionLines
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== ''),
    source: OWN_SOURCE,
  }
}

/**
 * Channel, clips and studs that reach into the bays lose their effect over an existing board, so the lining has to come
 * off whatever else is said of them. Where nothing has a frame behind it, there is no board in front of one either.
 */
export function hangsOnBareFrame({ layers }: Pick<AssemblyDraft, 'layers'>): boolean {
  const first = layers[0]?.layer
  if (first?.kind !== 'cavity') return false
  const { kind } = first.link
  return (
    kind === 'resilient-channel' || kind === 'sound-clip' || kind === 'low-profile-clip' || kind === 'staggered-stud'
  )
}

/** What keeps a draft from being built. */
export function draftProblems(draft: AssemblyDraft): readonly OwnAssemblyProblem[] {
  return ownAssemblyProblems(assemblyOf(draft, 'draft'))
}

/** Begins with a draft. */
export function startBuilding(draft: AssemblyDraft): Building {
  return {
    draft,
    former: [],
    good: draftProblems(draft).length === 0 ? draft : null,
    unread: {},
    openKey: draft.layers[0]?.key ?? null,
  }
}

/** One step on: what was there can be taken back, and the last version that can be built is kept. */
export function changeDraft(building: Building, draft: AssemblyDraft): Building {
  if (draft === building.draft) return building
  return {
    ...building,
    draft,
    former: [...building.former, building.draft].slice(-MOST_STEPS),
    good: draftProblems(draft).length === 0 ? draft : building.good,
  }
}

/** The draft once the project has it under this id and name; its earlier steps are then steps of that one too. */
export function savedAs(building: Building, replaces: string, name: string): Building {
  const known = building.draft.name
  const saved = (draft: AssemblyDraft): AssemblyDraft => ({
    ...draft,
    replaces,
    copiedFrom: null,
    name: draft.name === known ? name : draft.name,
  })
  const draft = saved(building.draft)
  return { ...building, draft, former: building.former.map(saved), good: draft }
}

/** The draft where another project stands on the page: there it is a new assembly. */
export function asNew(building: Building): Building {
  const loose = (draft: AssemblyDraft): AssemblyDraft => ({ ...draft, replaces: null })
  const draft = loose(building.draft)
  const good = building.good === building.draft ? draft : building.good && loose(building.good)
  return { ...building, draft, former: building.former.map(loose), good }
}

/** The step before; the same where there is none. */
export function takeBackStep(building: Building): Building {
  const draft = building.former.at(-1)
  if (!draft) return building
  return {
    ...building,
    draft,
    former: building.former.slice(0, -1),
    good: draftProblems(draft).length === 0 ? draft : building.good,
    unread: {},
  }
}

/** Puts a layer at a place (0: against the surface) and opens it. */
export function insertLayer(building: Building, at: number, layer: Layer): Building {
  const { draft } = building
  const key = `layer-${draft.nextKey}`
  const layers = draft.layers.toSpliced(at, 0, { key, layer, source: null })
  return { ...changeDraft(building, { ...draft, layers, nextKey: draft.nextKey + 1 }), openKey: key }
}

/** Replaces what a layer is; its numbers are then the user's. A layer of another kind has other fields. */
export function setLayer(building: Building, key: string, layer: Layer): Building {
  const { draft } = building
  const former = draft.layers.find((entry) => entry.key === key)?.layer
  const kept = former?.kind === layer.kind ? building : withoutUnread(building, key)
  const layers = draft.layers.map((entry) => (entry.key === key ? { key, layer, source: null } : entry))
  return changeDraft(kept, { ...draft, layers })
}

/** Takes a layer out; its neighbour opens. */
export function deleteLayer(building: Building, key: string): Building {
  const { draft } = building
  const index = draft.layers.findIndex((entry) => entry.key === key)
  if (index < 0) return building
  const layers = draft.layers.toSpliced(index, 1)
  const openKey = (layers[index] ?? layers.at(-1))?.key ?? null
  return { ...changeDraft(withoutUnread(building, key), { ...draft, layers }), openKey }
}

/** Moves a layer one place towards the surface (-1) or the room (1). */
export function moveLayer(building: Building, key: string, by: -1 | 1): Building {
  const { draft } = building
  const index = draft.layers.findIndex((entry) => entry.key === key)
  const entry = draft.layers[index]
  if (!entry || index + by < 0 || index + by >= draft.layers.length) return building
  const layers = draft.layers.toSpliced(index, 1).toSpliced(index + by, 0, entry)
  return changeDraft(building, { ...draft, layers })
}

/** Keeps what was typed into a field although it cannot be read; null: it was read. */
export function keepUnread(building: Building, field: string, text: string | null): Building {
  const { [field]: former, ...others } = building.unread
  if (text === null) return former === undefined ? building : { ...building, unread: others }
  return { ...building, unread: { ...others, [field]: text } }
}

/** Forgets what could not be read in the fields of one layer. */
function withoutUnread(building: Building, key: string): Building {
  const unread = Object.entries(building.unread).filter(([field]) => !field.startsWith(`${key} `))
  return { ...building, unread: Object.fromEntries(unread) }
}

/** Texts that could not be read, as problems of the layers they were typed into. */
export function unreadProblems({ draft, unread }: Building): readonly OwnAssemblyProblem[] {
  return Object.entries(unread).map(([field, text]) => {
    const index = draft.layers.findIndex(({ key }) => field.startsWith(`${key} `))
    const where = index < 0 ? '' : `Layer ${index + 1}: `
    return { layer: index < 0 ? null : index + 1, message: `${where}"${text}" could not be read.` }
  })
}

/** True where nothing would be lost: the project has this very assembly, or nothing was changed yet. */
export function isKept({ draft, former, unread }: Building, own: readonly Assembly[]): boolean {
  if (Object.keys(unread).length > 0) return false
  const saved = draft.replaces === null ? undefined : own.find(({ id }) => id === draft.replaces)
  if (!saved) return former.length === 0
  return JSON.stringify(plain(assemblyOf(draft, saved.id))) === JSON.stringify(plain(saved))
}

/** An assembly with its keys in one order and every layer source written out. */
function plain(assembly: Assembly): unknown {
  const layerSources = assembly.layerSources ?? assembly.layers.map(() => TYPED_SOURCE)
  return Object.entries({ ...assembly, layerSources })
    .filter(([, value]) => value !== undefined)
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
}

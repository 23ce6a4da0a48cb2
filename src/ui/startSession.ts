import { builtInCatalogue } from '#assemblies/catalogue.ts'
import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import { type Autosave, createAutosave, newestReadable } from '#state/autosave.ts'
import { asNew } from '#state/draft.ts'
import { createDocumentStore } from '#state/history.ts'
import { browserShelf, createPictureStore, type PictureStore } from '#state/pictures.ts'
import { createResultsMemo } from '#state/results.ts'
import { followClosely } from '#state/shown.ts'
import { createViewStore, type ViewState } from '#state/view.ts'
import { keptHashes, sha256 } from '#ui/pictureHashes.ts'
import { SAMPLES } from '#ui/samples.ts'
import type { Session } from '#ui/session.ts'
import type { Notice } from '#ui/shell.ts'
import { invariant } from '#units/result.ts'

type Places = Pick<ViewState, 'roomId' | 'schemeId'>

export interface Started {
  readonly session: Session
  readonly autosave: Autosave
  readonly pictures: PictureStore
  readonly notice: Notice | null
}

/** Opens on the last project kept on this machine; on a first visit, on the garage sample. */
export async function startSession(): Promise<Started> {
  const builtIn = builtInCatalogue()
  const read = (text: string) => readProject(text, builtIn)
  const autosave = createAutosave({ now: () => new Date(), write: writeProject, read })
  const pictures = createPictureStore({ shelf: browserShelf(), sha256, now: () => Date.now() })
  const versions = await autosave.versions()
  const found = newestReadable(versions, read)
  const project = 'value' in found ? found.value.project : sampleProject()
  const document = createDocumentStore(project)
  const view = createViewStore(placesOf(project))
  const left = new WeakMap<Project, Places>()
  document.store.subscribe((state, before) => {
    if (state.project === before.project) return
    const { roomId, schemeId } = view.getState()
    left.set(before.project, { roomId, schemeId })
    if (isAnother(before.project, state.project)) {
      const { building } = view.getState()
      view.setState({ ...left.get(state.project), building: building && asNew(building) })
    }
    keepViewOn(view, state.project)
  })
  const session: Session = {
    document,
    view,
    builtIn,
    results: createResultsMemo(),
    shown: followClosely(document.store),
  }
  void pictures.sweep(keptHashes(versions, project))
  return { session, autosave, pictures, notice: noticeOf(found.refused, 'value' in found) }
}

function sampleProject(): Project {
  const read = readProject(SAMPLES[0].text, builtInCatalogue())
  invariant(read.ok, 'the first sample can be read')
  return read.value.project
}

/** Where a project just opened is looked at: its first room, under the scheme put forward. */
export function placesOf(project: Project): Places {
  return {
    roomId: project.rooms[0]?.id ?? '',
    schemeId: project.proposal ?? project.schemes[0]?.id ?? '',
  }
}

/** One project in place of another (opened, or an opening undone), not a change to it. */
function isAnother(before: Project, after: Project): boolean {
  const parts = new Set<unknown>([...before.rooms, ...before.schemes])
  return ![...after.rooms, ...after.schemes].some((part) => parts.has(part))
}

/** A selection of things that are gone points at nothing: it is let go. */
function keepViewOn(view: Session['view'], project: Project): void {
  const { roomId, schemeId, surfaceIds, cornerId } = view.getState()
  const room = project.rooms.find((candidate) => candidate.id === roomId) ?? project.rooms[0]
  const there = new Set(room ? [...room.walls, room.ceiling, room.floor].map((surface) => surface.id) : [])
  const places = placesOf(project)
  const patch: Partial<ViewState> = {
    ...(room?.id === roomId ? {} : { roomId: places.roomId }),
    ...(project.schemes.some((scheme) => scheme.id === schemeId) ? {} : { schemeId: places.schemeId }),
    ...(surfaceIds.every((id) => there.has(id)) ? {} : { surfaceIds: surfaceIds.filter((id) => there.has(id)) }),
    ...(cornerId === null || room?.corners.some((corner) => corner.id === cornerId) ? {} : { cornerId: null }),
  }
  if (Object.keys(patch).length > 0) view.setState(patch)
}

function noticeOf(refused: readonly string[], opened: boolean): Notice | null {
  if (refused.length === 0) return null
  const instead = opened ? 'the newest one that can be read was opened' : 'a sample was opened instead'
  const count = refused.length === 1 ? 'The last version' : `The last ${refused.length} versions`
  return { kind: 'told', text: `${count} kept on this machine could not be read; ${instead}.`, details: refused }
}

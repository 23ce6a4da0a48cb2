import { createContext, useContext, useMemo } from 'react'
import { type StoreApi, useStore } from 'zustand'
import type { SchemeAnalysis } from '#analysis/analyse.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'
import type { DocumentState, DocumentStore } from '#state/history.ts'
import type { ResultsMemo } from '#state/results.ts'
import type { Shown } from '#state/shown.ts'
import type { createViewStore, ViewState } from '#state/view.ts'
import { invariant } from '#units/result.ts'

/** What every part of the page works on. */
export interface Session {
  readonly document: DocumentStore
  readonly view: ReturnType<typeof createViewStore>
  /** What every project can name; a project's own assemblies come on top (`useCatalogue`). */
  readonly builtIn: Catalogue
  readonly results: ResultsMemo
  /** What this part of the page shows: the plan at every step of the hand, numbers and tables at their ease. */
  readonly shown: StoreApi<Shown>
}

export const SessionContext = createContext<Session | null>(null)

export function useSession(): Session {
  const session = useContext(SessionContext)
  invariant(session, 'every view stands inside a session')
  return session
}

export function useDocument<Part>(select: (state: DocumentState) => Part): Part {
  return useStore(useSession().document.store, select)
}

export function useView<Part>(select: (state: ViewState) => Part): Part {
  return useStore(useSession().view, select)
}

/** The project as shown: what the hand is trying, else what is recorded. */
export function useShownProject(): Project {
  return useStore(useSession().shown, (shown) => shown.project)
}

/** Everything the project on the page can name: built-in assemblies and its own. */
export function useCatalogue(): Catalogue {
  return projectCatalogue(useShownProject())
}

/** The room on the page. */
export function useRoom(): Room {
  const project = useShownProject()
  const roomId = useView((view) => view.roomId)
  const room = project.rooms.find((candidate) => candidate.id === roomId) ?? project.rooms[0]
  invariant(room, 'a project has a room')
  return room
}

/** The scheme on the page. */
export function useScheme(): Scheme {
  const project = useShownProject()
  const schemeId = useView((view) => view.schemeId)
  const scheme = project.schemes.find((candidate) => candidate.id === schemeId) ?? project.schemes[0]
  invariant(scheme, 'a project has a scheme')
  return scheme
}

/** Results of the scheme on the page, as shown. */
export function useAnalysis(): SchemeAnalysis {
  const { results } = useSession()
  const { assemblies, partitions } = useShownProject()
  const room = useRoom()
  const scheme = useScheme()
  return useMemo(
    () => results({ assemblies, partitions }, room, scheme),
    [results, assemblies, partitions, room, scheme],
  )
}

import { useEffect, useMemo } from 'react'
import type { Room } from '#analysis/room.ts'
import { choiceFor, type Scheme } from '#analysis/scheme.ts'
import { AS_IS } from '#assemblies/assembly.ts'
import { isOwn } from '#assemblies/ownAssembly.ts'
import { builtBeyond } from '#project/beyond.ts'
import type { Command } from '#state/command.ts'
import { assignAssembly, removeLining } from '#state/commands/surfaces.ts'
import {
  type BenchSurface,
  benchSurfaces,
  type Candidate,
  candidatesFor,
  describeCandidate,
  sharedAssemblies,
} from '#ui/panels/bench/candidates.ts'
import { useCatalogue, useDocument, useRoom, useScheme, useSession, useShownProject, useView } from '#ui/session.ts'

/** The surfaces in hand and everything they could be. */
export interface BenchState {
  readonly room: Room
  /** As recorded, whatever is being tried. */
  readonly scheme: Scheme
  readonly surfaces: readonly [BenchSurface, ...BenchSurface[]]
  /** The one whose figures are shown. */
  readonly first: BenchSurface
  readonly candidates: readonly Candidate[]
  /** Recorded assembly; null: the surfaces differ. */
  readonly chosenId: string | null
  /** Recorded choice of the first surface. */
  readonly present: Candidate
  /** Pointed at, else null. */
  readonly pointed: Candidate | null
  readonly liningOff: boolean
  readonly point: (id: string) => void
  readonly leave: () => void
  readonly choose: (id: string) => void
  readonly setLiningOff: (off: boolean) => void
  readonly run: (command: Command) => string | null
}

/** The selected surfaces that this room has; a stale selection is none. */
export function useSelected(): readonly BenchSurface[] {
  const room = useRoom()
  const ids = useView((view) => view.surfaceIds)
  return useMemo(() => benchSurfaces(room).filter(({ facts }) => ids.includes(facts.id)), [room, ids])
}

/** The recorded scheme on the page. */
export function useRecordedScheme(): Scheme {
  const shown = useScheme()
  return useDocument((state) => state.project.schemes.find(({ id }) => id === shown.id)) ?? shown
}

/** Runs a command and answers with the sentence of its refusal, or null. */
export function useRun(): (command: Command) => string | null {
  const { document } = useSession()
  return (command) => {
    const outcome = document.run(command)
    if (outcome.ok) return null
    document.dismissRefusal()
    return outcome.error.message
  }
}

export function useBench(selected: readonly [BenchSurface, ...BenchSurface[]]): BenchState {
  const catalogue = useCatalogue()
  const room = useRoom()
  const scheme = useRecordedScheme()
  const surfaces = useWithBeyond(selected, scheme)
  const pointedId = useView((view) => view.pointedAssembly)
  const run = useRun()
  const first = surfaces[0]
  const choice = choiceFor(scheme, first.facts.id)
  const liningOff = choice.removeLining && first.facts.lining !== null
  const candidates = useMemo(() => {
    const list = candidatesFor(first, sharedAssemblies(surfaces, catalogue), liningOff, catalogue)
    return list.some(({ id }) => id === choice.assembly)
      ? list
      : [...list, outsider(first, choice.assembly, liningOff, catalogue)]
  }, [first, surfaces, liningOff, catalogue, choice.assembly])
  const ids = surfaces.map(({ facts }) => facts.id)
  const pointing = usePointing(scheme.id, ids)
  const alike = ids.every((id) => choiceFor(scheme, id).assembly === choice.assembly)
  return {
    room,
    scheme,
    surfaces,
    first,
    candidates,
    chosenId: alike ? choice.assembly : null,
    present: candidates.find(({ id }) => id === choice.assembly) ?? candidates[0]!,
    pointed: candidates.find(({ id }) => id === pointedId) ?? null,
    liningOff,
    ...pointing,
    setLiningOff: (off) => run(removeLining(scheme.id, ids, off)),
    run,
  }
}

/** The surfaces with what the scheme builds on the other face of those that two rooms share. */
function useWithBeyond(surfaces: BenchState['surfaces'], scheme: Scheme): BenchState['surfaces'] {
  const { assemblies, partitions } = useShownProject()
  const room = useRoom()
  return useMemo(() => {
    const beyond = builtBeyond({ assemblies, partitions }, room, scheme)
    if (beyond.size === 0) return surfaces
    const [first, ...others] = surfaces
    const told = (surface: BenchSurface): BenchSurface => ({ ...surface, beyond: beyond.get(surface.facts.id) })
    return [told(first), ...others.map(told)]
  }, [assemblies, partitions, room, scheme, surfaces])
}

/** An assembly the file asks for although it is not made for this structure: shown, so that it can be changed. */
function outsider(
  surface: BenchSurface,
  id: string,
  liningOff: boolean,
  catalogue: Parameters<typeof describeCandidate>[3],
): Candidate {
  const assembly = catalogue.assemblies.get(id) ?? null
  return {
    id,
    assembly,
    shortName: assembly?.shortName ?? id,
    name: assembly?.name ?? id,
    isOwn: isOwn(catalogue, id),
    described: describeCandidate(surface, id, liningOff, catalogue),
  }
}

/** Shows an assembly everywhere while it is pointed at; builds it when pressed. */
function usePointing(schemeId: string, ids: readonly string[]): Pick<BenchState, 'point' | 'leave' | 'choose'> {
  const { document, view } = useSession()
  const catalogue = useCatalogue()
  const command = (id: string) => assignAssembly(schemeId, ids, catalogue.assemblies.get(id) ?? null)
  const leave = () => {
    if (view.getState().pointedAssembly === null) return
    document.cancelPreview()
    view.setState({ pointedAssembly: null })
  }
  const key = `${schemeId} ${ids.join(' ')}`
  // A preview must not outlive the surfaces it was tried on.
  useEffect(() => {
    return key === ''
      ? undefined
      : () => {
          if (view.getState().pointedAssembly === null) return
          document.cancelPreview()
          view.setState({ pointedAssembly: null })
        }
  }, [key, document, view])
  return {
    point: (id) => {
      document.show(command(id))
      view.setState({ pointedAssembly: id })
    },
    leave,
    choose: (id) => {
      document.run(id === AS_IS ? assignAssembly(schemeId, ids, null) : command(id))
      view.setState({ pointedAssembly: null })
    },
  }
}

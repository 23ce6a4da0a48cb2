import { levelSd } from '#analysis/presets.ts'
import type { Measured, Receiver, Source } from '#analysis/target.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { changedEntry, idGiver } from '#state/commands/edit.ts'
import { withoutReceiver, withoutSource } from '#state/commands/followTargets.ts'
import { receiverRefusal } from '#state/commands/receiverChecks.ts'
import { measuredRefusal, sourceRefusal } from '#state/commands/sourceChecks.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Says of something that is heard; a name that is taken is numbered. */
export function addSource(source: Omit<Source, 'id'>): Command {
  return { label: `add ${source.name.trim()}`, apply: (project) => withSource(project, source) }
}

function withSource(project: Project, source: Omit<Source, 'id'>): Result<Project, Refusal> {
  const name = freeTargetName(source.name.trim(), project.sources)
  const added = { ...source, id: idGiver(project)('source'), name }
  const refused = sourceRefusal(project, added)
  return refused ? fail(refused) : ok({ ...project, sources: [...project.sources, added] })
}

/** Levels that are typed anew are no longer as seen or remembered: they count as measured, with the spread of that. */
export function changeSource(id: string, patch: Partial<Omit<Source, 'id'>>): Command {
  const typed = patch.levelsDb ? ({ basis: 'measured', sdDb: levelSd('measured') } as const) : {}
  return {
    label: 'change source',
    apply: (project) => {
      const changed = changedEntry(project.sources, id, (source) => ({ ...source, ...typed, ...trimmed(patch) }))
      if (!changed) return gone('source', id)
      const refused = sourceRefusal(project, changed.entry)
      return refused ? fail(refused) : ok({ ...project, sources: changed.entries })
    },
  }
}

/** Takes a source out; its receivers stay, with none chosen. */
export function deleteSource(id: string): Command {
  return {
    label: 'delete source',
    apply: (project) =>
      project.sources.some((source) => source.id === id) ? ok(withoutSource(project, id)) : gone('source', id),
  }
}

/**
 * Says of somebody who must not hear it; a name that is taken is numbered.
 * @param source  what that receiver hears, put into the project in the same step where it is not there yet
 */
export function addReceiver(receiver: Omit<Receiver, 'id'>, source: Omit<Source, 'id'> | null = null): Command {
  return {
    label: `add ${receiver.name.trim()}`,
    apply: (project) => {
      const heard = source ? withHeard(project, source) : ok({ project, id: receiver.source })
      if (!heard.ok) return heard
      const name = freeTargetName(receiver.name.trim(), project.receivers)
      const id = idGiver(heard.value.project)('receiver')
      const added = { ...receiver, id, name, source: heard.value.id }
      const refused = receiverRefusal(heard.value.project, added)
      return refused
        ? fail(refused)
        : ok({ ...heard.value.project, receivers: [...heard.value.project.receivers, added] })
    },
  }
}

/** The project with a source in it, and that source's id: one that says the same under any name is not added again. */
function withHeard(
  project: Project,
  source: Omit<Source, 'id'>,
): Result<{ readonly project: Project; readonly id: string | null }, Refusal> {
  const found = project.sources.find((other) => isSame(other, source))
  if (found) return ok({ project, id: found.id })
  const added = withSource(project, source)
  return added.ok ? ok({ project: added.value, id: added.value.sources.at(-1)?.id ?? null }) : added
}

function isSame({ id: _, ...one }: Source, other: Omit<Source, 'id'>): boolean {
  return one.preset === other.preset && JSON.stringify(one.levelsDb) === JSON.stringify(other.levelsDb)
}

/** A limit or a room that is typed anew is no longer the preset's, nor through the other room's surfaces. */
export function changeReceiver(id: string, patch: Partial<Omit<Receiver, 'id'>>): Command {
  return {
    label: 'change receiver',
    apply: (project) => {
      const changed = changedEntry(project.receivers, id, (receiver) => ({
        ...receiver,
        ...(patch.limit && { limitPreset: null }),
        ...(patch.room !== undefined && patch.room !== receiver.room && { through: [] }),
        ...trimmed(patch),
      }))
      if (!changed) return gone('receiver', id)
      const refused = receiverRefusal(project, changed.entry)
      return refused ? fail(refused) : ok({ ...project, receivers: changed.entries })
    },
  }
}

/** Lets a receiver hear a source, which is put into the project in the same step where it is not there yet. */
export function hearSource(id: string, source: Omit<Source, 'id'>): Command {
  return {
    label: `hear ${source.name.trim()}`,
    apply: (project) => {
      const heard = withHeard(project, source)
      if (!heard.ok) return heard
      return changeReceiver(id, { source: heard.value.id }).apply(heard.value.project)
    },
  }
}

/** Takes a receiver out; ducts that led to it lead to the others. */
export function deleteReceiver(id: string): Command {
  return {
    label: 'delete receiver',
    apply: (project) =>
      project.receivers.some((receiver) => receiver.id === id)
        ? ok(withoutReceiver(project, id))
        : gone('receiver', id),
  }
}

/** Adds level differences measured on site. */
export function addMeasured(receiverId: string, measured: Omit<Measured, 'id'>): Command {
  return {
    label: `add ${measured.name.trim()}`,
    apply: (project) => {
      const added = { ...trimmed(measured), id: idGiver(project)('measured') }
      const refused = measuredRefusal(added)
      if (refused) return fail(refused)
      return withMeasured(project, receiverId, (sets) => ok([...sets, added]))
    },
  }
}

export function changeMeasured(receiverId: string, id: string, patch: Partial<Omit<Measured, 'id'>>): Command {
  return {
    label: 'change measured levels',
    apply: (project) =>
      withMeasured(project, receiverId, (sets) => {
        const changed = changedEntry(sets, id, (set) => ({ ...set, ...trimmed(patch) }))
        if (!changed) return gone('measured set', id)
        const refused = measuredRefusal(changed.entry)
        return refused ? fail(refused) : ok(changed.entries)
      }),
  }
}

export function deleteMeasured(receiverId: string, id: string): Command {
  return {
    label: 'delete measured levels',
    apply: (project) =>
      withMeasured(project, receiverId, (sets) => {
        const kept = sets.filter((set) => set.id !== id)
        return kept.length === sets.length ? gone('measured set', id) : ok(kept)
      }),
  }
}

function withMeasured(
  project: Project,
  receiverId: string,
  change: (sets: readonly Measured[]) => Result<readonly Measured[], Refusal>,
): Result<Project, Refusal> {
  const index = project.receivers.findIndex(({ id }) => id === receiverId)
  const receiver = project.receivers[index]
  if (!receiver) return gone('receiver', receiverId)
  const measured = change(receiver.measured)
  if (!measured.ok) return measured
  return ok({ ...project, receivers: project.receivers.with(index, { ...receiver, measured: measured.value }) })
}

function trimmed<Patch extends { readonly name?: string | undefined }>(patch: Patch): Patch {
  return patch.name === undefined ? patch : { ...patch, name: patch.name.trim() }
}

/** A name as it is, or numbered where another has it already. */
function freeTargetName(wanted: string, others: readonly { readonly name: string }[]): string {
  let name = wanted
  for (let n = 2; wanted !== '' && others.some((other) => other.name === name); n += 1) name = `${wanted} ${n}`
  return name
}

function gone(what: string, id: string): Result<never, Refusal> {
  return fail({
    code: `no-${what.replace(' ', '-')}`,
    message: `There is no ${what} "${id}" in this project any more.`,
  })
}

import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Project } from '#project/project.ts'
import type { DocumentState } from '#state/history.ts'
import type { Result } from '#units/result.ts'

/** Whether the open project is kept on this machine. */
export type AutosaveState =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'saved'; readonly at: Date }
  | { readonly kind: 'failed'; readonly reason: string }

/** A project as it was kept. */
export interface Version {
  readonly savedAt: number
  readonly text: string
}

/** A project that is to be written; one that was just opened begins a version of its own. */
interface Waiting {
  readonly project: Project
  readonly begins: boolean
}

interface Versions extends DBSchema {
  versions: { key: number; value: Version }
}

/** Older ones fall off. */
const KEPT_VERSIONS = 10
/** A hand that keeps changing things writes once it pauses. */
const PAUSE_MS = 300
/** Changes made this soon after each other replace one version instead of pushing older ones out. */
const SAME_VERSION_MS = 60_000

export interface AutosaveInput {
  readonly now: () => Date
  readonly write: (project: Project) => string
  /** Whether a version could be opened again. */
  readonly read: (text: string) => Result<unknown, { readonly message: string }>
}

export interface Autosave {
  readonly store: StoreApi<AutosaveState>
  /** Every version on this machine, newest first; empty when storage cannot be read. */
  versions(): Promise<readonly Version[]>
  /** Keeps saving the document from now on; gives a function that stops. */
  follow(document: StoreApi<DocumentState>): () => void
  /** Writes at once what still waits. */
  flush(): Promise<void>
}

/** Keeps the last versions of the project in the browser's own database, each read back after it was written. */
export function createAutosave(input: AutosaveInput): Autosave {
  const store = createStore<AutosaveState>(() => ({ kind: 'waiting' }))
  const database = lazily(openVersions)
  let current: Kept | null = null
  let pending: Waiting | null = null
  let timer: ReturnType<typeof setTimeout> | null = null
  let known = 0
  let writing: Promise<void> = Promise.resolve()

  const save = async ({ project, begins }: Waiting): Promise<void> => {
    if (begins) current = null
    try {
      const at = input.now()
      const text = input.write(project)
      const read = input.read(text)
      if (!read.ok) throw new Error(read.error.message)
      current = await keep(await database(), current, { savedAt: at.getTime(), text })
      if (pending === null) store.setState({ kind: 'saved', at }, true)
    } catch (cause) {
      store.setState({ kind: 'failed', reason: cause instanceof Error ? cause.message : String(cause) }, true)
    }
  }
  const flush = (): Promise<void> => {
    if (timer !== null) clearTimeout(timer)
    timer = null
    const waiting = pending
    pending = null
    if (waiting !== null) writing = writing.then(() => save(waiting))
    return writing
  }
  const wait = (project: Project, begins: boolean): void => {
    pending = { project, begins: begins || (pending?.begins ?? false) }
    store.setState({ kind: 'waiting' }, true)
    if (timer !== null) clearTimeout(timer)
    timer = setTimeout(flush, PAUSE_MS)
  }
  return {
    store,
    flush,
    versions: async () => {
      try {
        return (await (await database()).getAll('versions')).reverse()
      } catch {
        return []
      }
    },
    follow: (document) => {
      wait(document.getState().project, true)
      return document.subscribe((state, before) => {
        if (state.project === before.project) return
        const begins = state.opened !== known
        known = state.opened
        if (begins) void flush()
        wait(state.project, begins)
      })
    },
  }
}

function openVersions(): Promise<IDBPDatabase<Versions>> {
  return openDB<Versions>('leafgap', 1, {
    upgrade: (database) => {
      database.createObjectStore('versions', { autoIncrement: true })
    },
  })
}

/** The version that stands for what is open now, and since when. */
interface Kept {
  readonly key: number
  readonly since: number
}

/** Keeps a version, unless the newest one already says the same. */
async function keep(database: IDBPDatabase<Versions>, former: Kept | null, version: Version): Promise<Kept> {
  const newest = await database.transaction('versions').store.openCursor(null, 'prev')
  if (newest?.value.text === version.text) return former ?? { key: newest.key, since: version.savedAt }
  const key = await writeVersion(database, version)
  return settle(database, former, key, version.savedAt)
}

/** Writes a version and reads it back; throws where the two differ. */
async function writeVersion(database: IDBPDatabase<Versions>, version: Version): Promise<number> {
  const key = await database.add('versions', version)
  const back = await database.get('versions', key)
  if (back?.text !== version.text) throw new Error('what was written could not be read back')
  return key
}

/** Takes out the version this one replaces, and those too old to keep. */
async function settle(database: IDBPDatabase<Versions>, former: Kept | null, key: number, at: number): Promise<Kept> {
  const replaces = former !== null && at - former.since < SAME_VERSION_MS
  if (replaces) await database.delete('versions', former.key)
  const keys = await database.getAllKeys('versions')
  for (const old of keys.slice(0, Math.max(0, keys.length - KEPT_VERSIONS))) await database.delete('versions', old)
  return { key, since: replaces ? former.since : at }
}

/** The newest version that can be read, and how many newer ones could not. */
export function newestReadable<Read>(
  versions: readonly Version[],
  read: (text: string) => Result<Read, { readonly message: string }>,
):
  | { readonly value: Read; readonly at: Date; readonly refused: readonly string[] }
  | { readonly refused: readonly string[] } {
  const refused: string[] = []
  for (const version of versions) {
    const outcome = read(version.text)
    if (outcome.ok) return { value: outcome.value, at: new Date(version.savedAt), refused }
    refused.push(outcome.error.message)
  }
  return { refused }
}

/** Makes a thing once; a failure is tried again the next time. */
function lazily<Value>(make: () => Promise<Value>): () => Promise<Value> {
  let made: Promise<Value> | null = null
  return () => {
    made ??= make().catch((cause: unknown) => {
      made = null
      throw cause
    })
    return made
  }
}

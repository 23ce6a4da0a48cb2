import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { Picture, Sha256 } from '#project/pictures.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A picture as it lies on this machine. */
export interface KeptPicture extends Picture {
  /** When it was first seen that nothing refers to it; null: something does, or it was not looked at yet. */
  readonly unusedSince: number | null
}

/** Where pictures lie: the browser's database, or a map in a test. */
export interface PictureShelf {
  get(sha256: string): Promise<KeptPicture | undefined>
  put(picture: KeptPicture): Promise<void>
  delete(sha256: string): Promise<void>
  hashes(): Promise<readonly string[]>
}

export interface PictureStore {
  /** Content hash of a picture's bytes. */
  readonly sha256: Sha256
  /** Keeps a picture and reads it back. A failure says why; the picture is then at hand only as long as the page. */
  keep(picture: Picture): Promise<Result<null, string>>
  find(sha256: string): Promise<Picture | null>
  /** Pictures at hand, of those asked for. */
  findAll(hashes: readonly string[]): Promise<ReadonlyMap<string, Picture>>
  /** Takes away what nothing has referred to for a while. */
  sweep(referred: ReadonlySet<string>): Promise<void>
  /** Called when a picture came in; gives a function that stops. */
  follow(listener: () => void): () => void
}

/** Another page may still hold it in its undo history. */
const UNUSED_MS = 24 * 3600 * 1000

export interface PictureStoreInput {
  readonly shelf: PictureShelf
  readonly sha256: Sha256
  readonly now: () => number
}

/** Pictures beside the documents, by content hash: written once, never changed, shared by every version that names them. */
export function createPictureStore({ shelf, sha256, now }: PictureStoreInput): PictureStore {
  /** What storage refused. */
  const inMemory = new Map<string, Picture>()
  const listeners = new Set<() => void>()
  const find = async (hash: string): Promise<Picture | null> => {
    const held = inMemory.get(hash)
    if (held) return held
    try {
      return (await shelf.get(hash)) ?? null
    } catch {
      return null
    }
  }
  return {
    sha256,
    find,
    findAll: async (hashes) => {
      const found = new Map<string, Picture>()
      for (const hash of hashes) {
        const picture = await find(hash)
        if (picture) found.set(hash, picture)
      }
      return found
    },
    keep: async (picture) => {
      const kept = await putAndReadBack(shelf, picture)
      if (!kept.ok) inMemory.set(picture.sha256, picture)
      for (const listener of listeners) listener()
      return kept
    },
    sweep: async (referred) => {
      try {
        await sweep(shelf, referred, now())
      } catch {
        // Storage that cannot be read has nothing to take away; whoever needs a picture of it is told.
      }
    },
    follow: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}

async function putAndReadBack(shelf: PictureShelf, picture: Picture): Promise<Result<null, string>> {
  try {
    await shelf.put({ ...picture, unusedSince: null })
    const back = await shelf.get(picture.sha256)
    return back?.bytes.length === picture.bytes.length ? ok(null) : fail('what was written could not be read back')
  } catch (cause) {
    return fail(cause instanceof Error ? cause.message : String(cause))
  }
}

/** Marks what nothing refers to, and takes away what was marked long enough ago. */
async function sweep(shelf: PictureShelf, referred: ReadonlySet<string>, now: number): Promise<void> {
  for (const sha256 of await shelf.hashes()) {
    const picture = await shelf.get(sha256)
    if (picture === undefined) continue
    const { unusedSince } = picture
    if (referred.has(sha256)) {
      if (unusedSince !== null) await shelf.put({ ...picture, unusedSince: null })
    } else if (unusedSince === null) await shelf.put({ ...picture, unusedSince: now })
    else if (now - unusedSince > UNUSED_MS) await shelf.delete(sha256)
  }
}

interface Pictures extends DBSchema {
  pictures: { key: string; value: KeptPicture }
}

/** The shelf in the browser's own database; opened when first needed, and again after a failure. */
export function browserShelf(): PictureShelf {
  let opened: Promise<IDBPDatabase<Pictures>> | null = null
  const database = () => {
    opened ??= openPictures().catch((cause: unknown) => {
      opened = null
      throw cause
    })
    return opened
  }
  return {
    get: async (sha256) => (await database()).get('pictures', sha256),
    put: async (picture) => {
      await (await database()).put('pictures', picture)
    },
    delete: async (sha256) => (await database()).delete('pictures', sha256),
    hashes: async () => (await database()).getAllKeys('pictures'),
  }
}

function openPictures(): Promise<IDBPDatabase<Pictures>> {
  return openDB<Pictures>('leafgap-pictures', 1, {
    upgrade: (database) => {
      database.createObjectStore('pictures', { keyPath: 'sha256' })
    },
  })
}

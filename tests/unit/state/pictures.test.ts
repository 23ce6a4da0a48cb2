import { describe, expect, it } from 'vitest'
import type { Picture } from '#project/pictures.ts'
import { createPictureStore, type KeptPicture, type PictureShelf } from '#state/pictures.ts'

const HOUR = 3600 * 1000
const picture = (sha256: string): Picture => ({ sha256, mime: 'image/png', bytes: Uint8Array.from([1, 2, 3]) })

/** A shelf in memory; one that is full refuses whatever is put on it. */
function aShelf(isFull = false): PictureShelf & { readonly held: Map<string, KeptPicture> } {
  const held = new Map<string, KeptPicture>()
  return {
    held,
    get: async (sha256) => held.get(sha256),
    put: async (kept) => {
      if (isFull) throw new Error('the disk is full')
      held.set(kept.sha256, kept)
    },
    delete: async (sha256) => void held.delete(sha256),
    hashes: async () => [...held.keys()],
  }
}

function aStore(shelf: PictureShelf, clock: { now: number }) {
  return createPictureStore({ shelf, sha256: async () => 'a', now: () => clock.now })
}

describe('pictures beside the documents', () => {
  it('one that is kept is found, and whoever waits for it hears of it', async () => {
    const store = aStore(aShelf(), { now: 0 })
    let heard = 0
    const stop = store.follow(() => {
      heard += 1
    })
    expect(await store.find('a')).toBeNull()
    expect(await store.keep(picture('a'))).toEqual({ ok: true, value: null })
    expect((await store.find('a'))?.bytes).toEqual(Uint8Array.from([1, 2, 3]))
    expect([...(await store.findAll(['a', 'b'])).keys()]).toEqual(['a'])
    stop()
    await store.keep(picture('b'))
    expect(heard).toBe(1)
  })

  it('storage that refuses says why, and the picture is at hand as long as the page', async () => {
    const store = aStore(aShelf(true), { now: 0 })
    expect(await store.keep(picture('a'))).toEqual({ ok: false, error: 'the disk is full' })
    expect(await store.find('a')).not.toBeNull()
  })

  it('what nothing refers to goes a day after that was first seen, and not before', async () => {
    const shelf = aShelf()
    const clock = { now: 0 }
    const store = aStore(shelf, clock)
    await store.keep(picture('used'))
    await store.keep(picture('unused'))
    const sweepAt = async (now: number, referred: readonly string[]) => {
      clock.now = now
      await store.sweep(new Set(referred))
      return [...shelf.held.keys()]
    }
    expect(await sweepAt(40 * HOUR, ['used'])).toEqual(['used', 'unused'])
    expect(await sweepAt(50 * HOUR, ['used'])).toEqual(['used', 'unused'])
    // Referred to again in between: the day begins anew.
    expect(await sweepAt(60 * HOUR, ['used', 'unused'])).toEqual(['used', 'unused'])
    expect(await sweepAt(80 * HOUR, ['used'])).toEqual(['used', 'unused'])
    expect(await sweepAt(105 * HOUR, ['used'])).toEqual(['used'])
  })
})

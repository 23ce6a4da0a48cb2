import type { DocumentStore } from '#state/history.ts'
import type { KeptText } from '#ui/fields/useTyped.ts'
import { useDocument, useSession } from '#ui/session.ts'

/** Texts that could not be read or were refused, by field; they live as long as the page, so that looking elsewhere loses none. */
const texts = new WeakMap<DocumentStore, Map<string, Kept>>()

interface Kept {
  readonly text: string
  readonly says: string | null
}

/** Where a field of this name keeps what it could not read. */
export function useKept(): (name: string) => KeptText {
  const { document } = useSession()
  const opened = useDocument((state) => state.opened)
  const kept = texts.get(document) ?? new Map<string, Kept>()
  texts.set(document, kept)
  return (name) => {
    // Another project has fields of the same names.
    const key = `${opened} ${name}`
    return {
      text: kept.get(key)?.text ?? null,
      says: kept.get(key)?.says,
      keep: (text, says) => {
        if (text === null) kept.delete(key)
        else kept.set(key, { text, says })
      },
    }
  }
}

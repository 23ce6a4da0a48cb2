import { pictureHashes } from '#project/pictures.ts'
import type { Project } from '#project/project.ts'
import type { Version } from '#state/autosave.ts'

/** SHA-256 by the browser, as 64 hexadecimal digits. */
export async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** Hashes that a kept version or the open project may mean; a version that cannot be read keeps all it mentions. */
export function keptHashes(versions: readonly Version[], open: Project): ReadonlySet<string> {
  const mentioned = versions.flatMap(({ text }) => text.match(/\b[0-9a-f]{64}\b/g) ?? [])
  return new Set([...mentioned, ...pictureHashes(open)])
}

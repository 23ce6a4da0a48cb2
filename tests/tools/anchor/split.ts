/** Which half of the published rows one belongs to: constants are fitted on `training` rows, never on `unseen` ones. */
export type Half = 'training' | 'unseen'

/** FNV-1a over the characters, then mixed, so that neighbouring ids part company. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5
  for (const character of text) hash = Math.imul(hash ^ character.charCodeAt(0), 0x01000193)
  hash ^= hash >>> 16
  hash = Math.imul(hash, 0x85ebca6b)
  hash ^= hash >>> 13
  return hash >>> 0
}

/** The half of a row by the last bit of a hash of its id: written down before anything was fitted. */
export function halfOf(id: string): Half {
  return (hashOf(id) & 1) === 0 ? 'training' : 'unseen'
}

import type { FurnitureKind } from '#analysis/room.ts'

const KIND_WORDS: Readonly<Record<FurnitureKind, string>> = {
  'drum-kit': 'drum kit',
  desk: 'desk',
  piano: 'piano',
  booth: 'booth',
  other: 'something else',
}

export function furnitureKindWords(kind: FurnitureKind): string {
  return KIND_WORDS[kind]
}

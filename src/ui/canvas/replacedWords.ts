import type { Room, Wall } from '#analysis/room.ts'
import { choiceFor, type Scheme } from '#analysis/scheme.ts'

/** What an outline drawn over a room takes with it, in a sentence; null: nothing. */
export function replacedWords(former: Room, schemes: readonly Scheme[]): string | null {
  const things = [
    counted(former.openings.length, 'opening'),
    counted(former.obstacles.length, 'obstacle'),
    counted(former.drops.length, 'drop'),
  ].filter((words) => words !== null)
  const [first] = former.walls
  const areUnlike = first !== undefined && former.walls.some((wall) => !isAlike(wall, first))
  const areLinedUnlike = first !== undefined && former.walls.some((wall) => !isLinedAlike(schemes, wall, first))
  const lost = former.openings.length + former.obstacles.length + former.drops.length
  const clauses = [
    ...(lost > 0 ? [`${joined(things)} of the old one ${lost === 1 ? 'is' : 'are'} gone`] : []),
    ...(areUnlike ? ['every wall is described like the former Wall 1'] : []),
    ...(areLinedUnlike ? ['every wall is lined in each scheme like the former Wall 1'] : []),
  ]
  if (clauses.length === 0) return null
  const back = lost === 0 ? 'Undo brings the old outline back.' : `Undo brings ${lost === 1 ? 'it' : 'them'} back.`
  return `The new outline replaces the room: ${clauses.join(', and ')}. ${back}`
}

function counted(count: number, word: string): string | null {
  if (count === 0) return null
  return `${count} ${word}${count === 1 ? '' : 's'}`
}

function joined(words: readonly string[]): string {
  if (words.length < 2) return words.join('')
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** Whether every scheme builds the same against both. */
function isLinedAlike(schemes: readonly Scheme[], a: Wall, b: Wall): boolean {
  return schemes.every((scheme) => {
    const [one, other] = [choiceFor(scheme, a.id), choiceFor(scheme, b.id)]
    return one.assembly === other.assembly && one.removeLining === other.removeLining
  })
}

function isAlike(a: Wall, b: Wall): boolean {
  return (
    a.existing === b.existing &&
    a.farSide === b.farSide &&
    a.measuredTo === b.measuredTo &&
    a.outOfTrueMm === 0 &&
    a.lining?.thicknessMm === b.lining?.thicknessMm &&
    a.lining?.material === b.lining?.material &&
    a.lining?.neededForFire === b.lining?.neededForFire
  )
}

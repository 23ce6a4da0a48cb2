import type { Room, Wall } from '#analysis/room.ts'
import { choiceFor, type Scheme } from '#analysis/scheme.ts'

/** What a new outline takes with it. */
interface Replaced {
  /** Things gone with the old outline, counted: 2 openings and 1 drop; null: none. */
  readonly gone: string | null
  readonly goneCount: number
  /** What its walls no longer tell apart. */
  readonly levelled: readonly string[]
}

/** What an outline drawn over a room took with it, in a sentence; null: nothing. */
export function replacedWords(former: Room, after: Room, schemes: readonly Scheme[]): string | null {
  const { gone, goneCount, levelled } = replacedBy(former, after, schemes)
  const isOne = goneCount === 1
  const clauses = [...(gone === null ? [] : [`${gone} of the old one ${isOne ? 'is' : 'are'} gone`]), ...levelled]
  if (clauses.length === 0) return null
  const back = goneCount === 0 ? 'Undo brings the old outline back.' : `Undo brings ${isOne ? 'it' : 'them'} back.`
  return `The new outline replaces the room: ${clauses.join(', and ')}. ${back}`
}

/** What an outline will take with it once it is closed, said before the first corner stands. */
export function replacingWords(former: Room, after: Room, schemes: readonly Scheme[]): string {
  const { gone, levelled } = replacedBy(former, after, schemes)
  const clauses = [...(gone === null ? [] : [`its ${gone} will go`]), ...levelled]
  if (clauses.length === 0) return `The new outline will replace that of "${former.name}".`
  return `The new outline will replace that of "${former.name}": ${clauses.join(', and ')}.`
}

function replacedBy(former: Room, after: Room, schemes: readonly Scheme[]): Replaced {
  const counts = [
    [former.openings.length - after.openings.length, 'opening'],
    [former.obstacles.length - after.obstacles.length, 'obstacle'],
    [former.drops.length - after.drops.length, 'drop'],
    [former.heights.length - after.heights.length, 'height point'],
    [former.ceilingParts.length - after.ceilingParts.length, 'ceiling part'],
    [former.furniture.length - after.furniture.length, 'piece', ' of furniture'],
    [former.diagonals.length - after.diagonals.length, 'diagonal'],
  ] as const
  const things = counts.flatMap(([count, word, rest = '']) => (count > 0 ? [`${counted(count, word)}${rest}`] : []))
  const [first] = former.walls
  const areUnlike = first !== undefined && former.walls.some((wall) => !isAlike(wall, first))
  const areLinedUnlike = first !== undefined && former.walls.some((wall) => !isLinedAlike(schemes, wall, first))
  return {
    gone: things.length === 0 ? null : joined(things),
    goneCount: counts.reduce((sum, [count]) => sum + Math.max(count, 0), 0),
    levelled: [
      ...(areUnlike ? ['every wall is described like the former Wall 1'] : []),
      ...(areLinedUnlike ? ['every wall is lined in each scheme like the former Wall 1'] : []),
    ],
  }
}

function counted(count: number, word: string): string {
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

import type { OpeningCheck } from '#analysis/results.ts'
import type { Opening, OpeningKind } from '#analysis/room.ts'
import { fixed, formatThickness } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

const KIND_WORDS: Readonly<Record<OpeningKind, string>> = {
  door: 'door',
  window: 'window',
  'vehicle-door': 'vehicle door',
  vent: 'vent or duct',
}

export function openingKindWords(kind: OpeningKind): string {
  return KIND_WORDS[kind]
}

/** What an opening is; of a door how its leaves hang: door hinged towards corner 2, into the room. */
export function openingWords(opening: Opening, ends: readonly [number, number]): string {
  if (opening.kind === 'door') return `door ${leafWords(opening, ends)}`
  return opening.shape === 'round' ? `round ${openingKindWords(opening.kind)}` : openingKindWords(opening.kind)
}

/** How the leaves of a door hang: one leaf, hinged at corner 2's side, swings into the room; hangs in the existing wall. */
function leafWords(opening: Opening, ends: readonly [number, number]): string {
  const side = (hinge: 'from' | 'to') => `towards corner ${hinge === 'from' ? ends[0] : ends[1]}`
  const way = (swing: 'in' | 'out') => (swing === 'in' ? 'into the room' : 'out of the room')
  const leaves =
    opening.leaves === 'two'
      ? `of two leaves, ${way(opening.swing)}`
      : `hinged ${side(opening.hinge)}, ${way(opening.swing)}`
  const hung = opening.hungIn === 'lining' ? ', hung in the new lining' : ''
  const lobby = opening.lobby ? `; lobby door hinged ${side(opening.lobby.hinge)}, ${way(opening.lobby.swing)}` : ''
  return `${leaves}${hung}${lobby}`
}

/** What linings and floor leave of an opening, figure by figure. */
export function checkRows(
  opening: Opening,
  check: OpeningCheck,
  unit: LengthUnit,
): readonly (readonly [string, string])[] {
  const length = (mm: number) => formatThickness(mm, unit)
  const leaves = check.door?.leaves ?? []
  const which = (index: number) => (leaves.length > 1 ? ` ${index + 1}` : '')
  return [
    ['Reveal', check.revealDepthMm > 0 ? `${length(check.revealDepthMm)} deep` : 'none'],
    ['Clear width', length(check.clearWidthMm)],
    [opening.sillMm > 0 ? 'Head over the new floor' : 'Clear height over the new floor', length(check.clearHeightMm)],
    ...(opening.sillMm > 0
      ? []
      : [['Step at the threshold', check.thresholdStepMm > 0 ? length(check.thresholdStepMm) : 'none'] as const]),
    ...leaves.flatMap(({ hangs, opensDeg }, index) => [
      [`Leaf${which(index)} hangs`, hangs] as const,
      [`Leaf${which(index)} opens`, opensWords(opensDeg)] as const,
    ]),
  ]
}

/** The same in few words, for one line under a row. */
export function checkParts(opening: Opening, check: OpeningCheck, unit: LengthUnit): readonly string[] {
  const length = (mm: number) => formatThickness(mm, unit)
  const opens = check.door?.leaves.map(({ opensDeg }) => opensWords(opensDeg)).join(' and ')
  return [
    check.revealDepthMm > 0 ? `reveal ${length(check.revealDepthMm)}` : 'no reveal',
    ...(opening.sillMm > 0
      ? [`clear width ${length(check.clearWidthMm)}`, `head ${length(check.clearHeightMm)} over the new floor`]
      : [`clear ${length(check.clearWidthMm)} × ${length(check.clearHeightMm)}`]),
    ...(opening.sillMm === 0 && check.thresholdStepMm > 0 ? [`step ${length(check.thresholdStepMm)}`] : []),
    ...(opens === undefined ? [] : [`opens ${opens}`]),
  ]
}

function opensWords(degrees: number): string {
  return degrees >= 90 ? `to ${fixed(degrees, 0)}°` : `to ${fixed(degrees, 0)}° only`
}

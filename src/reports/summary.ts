import { publishedWords } from '#analysis/published.ts'
import type { Ledger, OpeningCheck, SchemeResult, SurfaceResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { SchemeHeard } from '#reports/heard.ts'
import { schemeNotes } from '#reports/json.ts'
import { receiverLines, receiverNoteLines } from '#reports/receiverText.ts'
import { heardIn, nameIn, type RoomResults } from '#reports/roomResults.ts'
import {
  fixed,
  formatArea,
  formatLength,
  formatMass,
  formatPercent,
  formatThickness,
  formatVolume,
} from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** A smaller area would be told as none, m2. */
const LEAST_TOLD_M2 = 0.005

/** Every scheme of every room in words for a terminal, in the reader's units. */
export function textSummary(projectName: string, rooms: readonly RoomResults[], units: LengthUnit): string {
  const blocks = rooms.flatMap((one) => [
    ...(rooms.length > 1 ? [one.room.name] : []),
    ...one.results.map((result, i) => schemeText(result, one.room, heardIn(one, i), units)),
  ])
  const notes = new Set(rooms.flatMap((one) => schemeNotes(one.room, heardIn(one, 0)).map(({ text }) => text)))
  return `${[projectName, ...blocks, ...notes].join('\n\n')}\n`
}

function schemeText(result: SchemeResult, room: Room, heard: SchemeHeard | null, units: LengthUnit): string {
  const { ledger } = result
  const { floorAreaM2, clearHeightMm, volumeM3 } = ledger
  return [
    result.name,
    `  floor   ${formatArea(floorAreaM2.existing, units)} -> ${formatArea(floorAreaM2.clear, units)}, ${formatPercent(ledger.keptPercent)} kept`,
    `  height  ${formatLength(clearHeightMm.existing, units)} -> ${formatLength(clearHeightMm.lowest, units)}, ${formatLength(clearHeightMm.mean, units)} in the mean`,
    ...areaLines(ledger, units),
    ...ledger.drops.map((drop) => `          ${formatLength(drop.clearHeightMm, units)} under ${drop.name}`),
    `  volume  ${formatVolume(volumeM3.existing, units)} -> ${formatVolume(volumeM3.clear, units)}`,
    `  weight  ${formatMass(ledger.addedMassKg, units)} added`,
    ...result.surfaces.map((surface) => `  ${surfaceText(surface, units)}`),
    ...(heard?.receivers ?? []).flatMap((one) => receiverLines(one, units)),
    ...result.openings.flatMap((check) => openingLines(check, room, units)),
    ...result.boxes.flatMap(({ name, problems }) => fitLines(`silencer box ${name}`, problems)),
    ...result.furniture.flatMap(({ id, problems }) => fitLines(`furniture ${nameIn(room.furniture, id)}`, problems)),
    ...result.corners.filter(({ gapMm }) => gapMm !== null).map(({ text }) => `  corner: ${text}`),
    ...receiverNoteLines(heard?.receivers ?? []),
    ...noteLines(result),
    ...[...(heard?.cautions ?? []), ...result.cautions].map((caution) => `  caution: ${caution.text}`),
  ].join('\n')
}

/** How much of the floor has a height that not all of it has. */
function areaLines({ areaAbove, floorAreaM2 }: Ledger, units: LengthUnit): readonly string[] {
  return areaAbove
    .filter(({ areaM2 }) => floorAreaM2.clear - areaM2 > LEAST_TOLD_M2)
    .map(({ heightMm, areaM2 }) => {
      const over = areaM2 > LEAST_TOLD_M2 ? `over ${formatArea(areaM2, units)} of the floor` : 'nowhere'
      return `          ${formatLength(heightMm, units)} and more ${over}`
    })
}

function openingLines(check: OpeningCheck, room: Room, units: LengthUnit): readonly string[] {
  const { id, clearWidthMm, clearHeightMm, revealDepthMm, thresholdStepMm, door, problems } = check
  const size = `${formatLength(clearWidthMm, units)} clear, its head ${formatLength(clearHeightMm, units)} over the new floor`
  const reveal = revealDepthMm > 0 ? `; reveal ${formatLength(revealDepthMm, units)} deep` : ''
  const step = thresholdStepMm > 0 ? `; step ${formatThickness(thresholdStepMm, units)}` : ''
  const leaves = (door?.leaves ?? []).map((leaf) => `; leaf ${leaf.hangs}, opens ${fixed(leaf.opensDeg, 0)} degrees`)
  return [
    `  opening ${nameIn(room.openings, id)}: ${size}${reveal}${step}${leaves.join('')}`,
    ...problems.map(({ text }) => `    problem: ${text}`),
  ]
}

function fitLines(what: string, problems: readonly { readonly text: string }[]): readonly string[] {
  if (problems.length === 0) return [`  ${what}: fits`]
  return [`  ${what}: does not fit`, ...problems.map(({ text }) => `    problem: ${text}`)]
}

/** Every note once, with the surfaces it belongs to. */
function noteLines(result: SchemeResult): readonly string[] {
  const labels = new Map<string, string[]>()
  for (const surface of result.surfaces.filter(({ rating }) => rating !== null)) {
    for (const { text } of surface.notes) labels.set(text, [...(labels.get(text) ?? []), surface.label])
  }
  return [...labels].map(([text, surfaces]) => `  note, ${surfaces.join(', ')}: ${text}`)
}

function surfaceText(surface: SurfaceResult, units: LengthUnit): string {
  const depth = formatThickness(surface.depthFromFaceMm, units)
  return `${surface.label.padEnd(8)}${surface.assemblyName}; takes ${depth} from the finished face; ${ratingText(surface)}`
}

/** "STC 55, likely 51-59; Rw 54 (-3; -9); published 55 (source)", or why there is none. */
export function ratingText({ rating, notes }: SurfaceResult): string {
  if (!rating) return notes.at(-1)?.text ?? 'no rating'
  const terms = `(${signed(rating.c)}; ${signed(rating.ctr)})`
  const [low, high] = rating.likely
  return `STC ${rating.stc}, likely ${low}-${high}; Rw ${rating.rw} ${terms}; ${publishedWords(rating.published)}`
}

function signed(value: number): string {
  return fixed(value, 0)
}

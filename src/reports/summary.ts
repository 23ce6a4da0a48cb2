import { publishedWords } from '#analysis/published.ts'
import type { SchemeResult, SurfaceResult } from '#analysis/results.ts'
import { SURFACES_ONLY } from '#reports/json.ts'
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

/** Every scheme in words for a terminal, in the reader's units. */
export function textSummary(projectName: string, results: readonly SchemeResult[], units: LengthUnit): string {
  const blocks = results.map((result) => schemeText(result, units))
  return `${[projectName, ...blocks, SURFACES_ONLY].join('\n\n')}\n`
}

function schemeText(result: SchemeResult, units: LengthUnit): string {
  const { ledger } = result
  const { floorAreaM2, clearHeightMm, volumeM3 } = ledger
  return [
    result.name,
    `  floor   ${formatArea(floorAreaM2.existing, units)} -> ${formatArea(floorAreaM2.clear, units)}, ${formatPercent(ledger.keptPercent)} kept`,
    `  height  ${formatLength(clearHeightMm.existing, units)} -> ${formatLength(clearHeightMm.lowest, units)}`,
    ...ledger.drops.map((drop) => `          ${formatLength(drop.clearHeightMm, units)} under ${drop.name}`),
    `  volume  ${formatVolume(volumeM3.existing, units)} -> ${formatVolume(volumeM3.clear, units)}`,
    `  weight  ${formatMass(ledger.addedMassKg, units)} added`,
    ...result.surfaces.map((surface) => `  ${surfaceText(surface, units)}`),
    ...noteLines(result),
    ...result.cautions.map((caution) => `  caution: ${caution.text}`),
  ].join('\n')
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

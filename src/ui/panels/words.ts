import { NO_PUBLISHED, publishedShort, publishedSources } from '#analysis/published.ts'
import type { SurfaceRating, SurfaceResult } from '#analysis/results.ts'
import type { FarSide } from '#analysis/room.ts'
import { formatArea, formatVolume } from '#units/format.ts'
import type { CubicMetres, LengthUnit, SquareMetres } from '#units/quantity.ts'

/** Said wherever surfaces are ranked: the paths that are not in the sum. */
export const NOT_IN_FIGURE = 'doors, windows, leaks, ventilation and flanking are not in this figure'

/** STC 52, likely 47-57; never without its range. */
export function stcWords(rating: Pick<SurfaceRating, 'stc' | 'likely'> | null): string {
  return rating === null ? 'not rated' : `STC ${rating.stc}, ${likelyWords(rating)}`
}

/** likely 47-57 */
export function likelyWords({ likely }: Pick<SurfaceRating, 'likely'>): string {
  return `likely ${likely[0]}-${likely[1]}`
}

/** STC 52, likely 47-57, published 50 (NBC-W1a): in a table that has its sources beneath. */
export function stcInTable(rating: SurfaceRating | null): string {
  const printed = rating && publishedShort(rating.published)
  return printed ? `${stcWords(rating)}, ${printed}` : stcWords(rating)
}

/** Beneath a table of ratings: the sources of what is in print for them, or that nothing is. */
export function printedNote(ratings: readonly (SurfaceRating | null)[]): string {
  const rated = ratings.flatMap((rating) => rating ?? [])
  const sources = publishedSources(rated.map(({ published }) => published))
  if (rated.length === 0) return ''
  if (sources.length === 0) {
    return rated.length > 1 ? 'No published value for any of these build-ups.' : `${capital(NO_PUBLISHED)}.`
  }
  const rest = rated.every(({ published }) => published.length > 0) ? '' : ` Where none is named: ${NO_PUBLISHED}.`
  return `Published values: ${sources.join('. ')}.${rest}`
}

/** Rw 61 (-2; -7): the two adaptation terms C and Ctr follow. */
export function rwWords(rating: Pick<SurfaceRating, 'rw' | 'c' | 'ctr'> | null): string {
  return rating === null ? 'not rated' : `Rw ${rating.rw} (${rating.c}; ${rating.ctr})`
}

/** Why a surface has no rating, in its own words. */
export function whyNotRated(surface: Pick<SurfaceResult, 'rating' | 'notes' | 'label'>): string | null {
  if (surface.rating !== null) return null
  const note = surface.notes.find(({ code }) => code === 'soil' || code === 'not-predicted')
  return note?.text ?? `${surface.label}: no calculation stands behind a rating of this build-up.`
}

const FAR_SIDE_WORDS: Readonly<Record<FarSide, string>> = {
  neighbour: 'a neighbour',
  outdoors: 'outdoors',
  'own-house': 'the own house',
  soil: 'soil',
  nothing: 'nothing to protect',
}

export function farSideWords(farSide: FarSide): string {
  return FAR_SIDE_WORDS[farSide]
}

/** The other of the two units, for the second figure beside the first. */
export function otherUnit(unit: LengthUnit): LengthUnit {
  return unit === 'mm' ? 'ft-in' : 'mm'
}

/** 224.9 ft² · 20.89 m² */
export function bothAreas(area: SquareMetres, unit: LengthUnit): string {
  return `${formatArea(area, unit)} · ${formatArea(area, otherUnit(unit))}`
}

export function bothVolumes(volume: CubicMetres, unit: LengthUnit): string {
  return `${formatVolume(volume, unit)} · ${formatVolume(volume, otherUnit(unit))}`
}

/** A change with its sign, or null where it is too small to show: +1.2 ft², -0.4 ft². */
export function signed(change: number, text: (size: number) => string): string | null {
  const size = text(Math.abs(change))
  if (size === text(0)) return null
  return `${change < 0 ? '−' : '+'}${size}`
}

/** The first letter in capitals. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** Wall 1, Wall 2 and Ceiling; runs of walls closed up: Walls 1-4 and Ceiling. */
export function listOf(labels: readonly string[]): string {
  const closed = closeRuns(labels)
  if (closed.length < 2) return closed.join('')
  return `${closed.slice(0, -1).join(', ')} and ${closed.at(-1)}`
}

function closeRuns(labels: readonly string[]): readonly string[] {
  const runs: { text: string; first: number; last: number }[] = []
  for (const text of labels) {
    const number = Number(/^Wall (\d+)$/.exec(text)?.[1] ?? Number.NaN)
    const run = runs.at(-1)
    if (run && run.last + 1 === number) run.last = number
    else runs.push({ text, first: number, last: number })
  }
  return runs.flatMap(({ text, first, last }) => {
    if (!(last > first)) return [text]
    return last === first + 1 ? [text, `Wall ${last}`] : [`Walls ${first}-${last}`]
  })
}

/** A scheme's name with its letter; a name that begins with a letter of its own keeps that one. */
export function schemeTitle(name: string, letter: string): string {
  return /^[A-Z]\d? /.test(name) ? name : `${letter} ${name}`
}

import { publishedWords } from '#analysis/published.ts'
import type { SchemeResult, SurfaceResult } from '#analysis/results.ts'
import type { Paragraph } from '#drawing/sheet/flow.ts'
import { joinLabels } from '#drawing/sheet/schedule.ts'

/**
 * Everything the sheet says in sentences: life safety first, then checks, then how far the figures can be trusted, and
 * the corners as built where there is room for them.
 */
export function paragraphsOf(result: SchemeResult, withCorners: boolean): Paragraph[] {
  const ofKind = (kind: 'life-safety' | 'check'): string[] => [
    ...new Set(result.cautions.filter((caution) => caution.kind === kind).map(({ text }) => text)),
  ]
  return [
    ...section('Life safety', ofKind('life-safety'), true),
    ...section('To be checked', ofKind('check'), false),
    ...section('How far the figures can be trusted', notesOf(result.surfaces), false),
    ...section('Corners as built', withCorners ? cornerTexts(result) : [], false),
  ]
}

function cornerTexts({ corners }: SchemeResult): string[] {
  const built = corners.filter(({ gapMm }) => gapMm !== null).map(({ text }) => text)
  return built.length === 0 ? [] : [...built, 'The space account keeps the mitre at every corner.']
}

function section(heading: string, texts: readonly string[], lifeSafety: boolean): Paragraph[] {
  if (texts.length === 0) return []
  const common = { role: 'caution', sign: false, heading: false, weight: 400, colour: 'ink' } as const
  return [
    { ...common, text: heading, weight: 600, heading: true, colour: lifeSafety ? 'warn' : 'ink' },
    ...texts.map((text) => ({ ...common, text, sign: lifeSafety })),
  ]
}

/** Each note once, led by the surfaces it speaks of. */
function notesOf(surfaces: readonly SurfaceResult[]): string[] {
  const spokenOf = new Map<string, SurfaceResult[]>()
  for (const surface of surfaces) {
    for (const text of [...printNote(surface), ...surface.notes.map((note) => note.text)]) {
      const lead = `${surface.label}: `
      const bare = text.startsWith(lead) ? text.slice(lead.length) : text
      const others = spokenOf.get(bare)
      if (others) others.push(surface)
      else spokenOf.set(bare, [surface])
    }
  }
  return [...spokenOf].map(([text, about]) => `${joinLabels(about)}: ${text}`)
}

/** What is in print for exactly this build-up, with its source, or that nothing is. */
function printNote({ rating }: SurfaceResult): string[] {
  if (rating === null) return []
  const words = publishedWords(rating.published)
  return [`${words.charAt(0).toUpperCase()}${words.slice(1)}.`]
}

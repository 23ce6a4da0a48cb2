import { publishedWords } from '#analysis/published.ts'
import type { SchemeResult, SurfaceResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import { airTexts } from '#drawing/sheet/airWords.ts'
import type { Paragraph } from '#drawing/sheet/flow.ts'
import type { SheetHeard } from '#drawing/sheet/heard.ts'
import { openingFills, openingSources } from '#drawing/sheet/openingFills.ts'
import { joinLabels } from '#drawing/sheet/schedule.ts'
import type { SheetInput } from '#drawing/sheet/sheetInput.ts'
import { marginNotes, receiverTexts } from '#drawing/sheet/targetsWords.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** What stands beside the sentences, and whether they are to have the corners. */
interface Beside {
  /** The openings have their table. */
  readonly openings: boolean
  readonly corners: boolean
}

/** Where the openings have no table, what fills them is said in sentences. */
function filledTexts(heard: SheetHeard, room: Room, result: SchemeResult): readonly string[] {
  const fills = openingFills(heard, room, result)
  return room.openings.flatMap((opening) => {
    const filled = fills(opening)
    return filled === null
      ? []
      : [`${opening.name}: ${filled.charAt(0).toLowerCase()}${filled.slice(1)}.`.replace('..', '.')]
  })
}

/**
 * Everything the sheet says in sentences: life safety first, then checks, who hears what, then how far the figures can be
 * trusted, and the corners as built where there is room for them.
 */
export function paragraphsOf({ result, heard, room, units }: SheetInput, has: Beside): Paragraph[] {
  const cautions = [...result.cautions, ...(heard?.cautions ?? [])]
  const ofKind = (kind: 'life-safety' | 'check'): string[] => [
    ...new Set(cautions.filter((caution) => caution.kind === kind).map(({ text }) => text)),
  ]
  const printed = heard ? openingSources(heard, room, result) : []
  const filled = heard && !has.openings ? filledTexts(heard, room, result) : []
  const isHeard = heard !== undefined && heard.receivers.length > 0
  return [
    ...section('Life safety', ofKind('life-safety'), true),
    ...section('To be checked', ofKind('check'), false),
    ...(isHeard ? heardSections(heard, room, units) : []),
    ...section('Openings', filled, false),
    ...section('How far the figures can be trusted', [...notesOf(result.surfaces), ...printed], false),
    ...section('Corners as built', has.corners ? cornerTexts(result) : [], false),
  ]
}

function heardSections(heard: SheetHeard, room: Room, units: LengthUnit): Paragraph[] {
  return [
    ...receiverTexts(heard).flatMap(({ heading, texts }) => section(`Who hears what: ${heading}`, texts, false)),
    ...section('Air and leaks', airTexts(heard, room, units), false),
    ...section('How far the margins can be trusted', marginNotes(heard), false),
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

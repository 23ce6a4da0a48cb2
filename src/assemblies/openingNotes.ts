import type { OctaveKey } from '#acoustics/bands.ts'
import table from '#assemblies/data/openings.json' with { type: 'json' }
import type { OpeningMade, OpeningType } from '#assemblies/opening.ts'
import { wornGap } from '#assemblies/openingSeals.ts'
import type { OpeningContext, OpeningNote } from '#assemblies/openingSound.ts'
import type { Decibels } from '#units/quantity.ts'

interface Told {
  readonly made: OpeningMade
  readonly type: OpeningType
  readonly context: OpeningContext
  readonly assumed: readonly OctaveKey[]
  /** Seals and all; null: it stops nothing. */
  readonly stc: Decibels | null
}

/** Past this what goes round two leaves carries as much. @source common practice, no source */
const ROUND_FROM_STC = 60

/** What must be known beside the figure of an opening. */
export function openingNotes(told: Told): readonly OpeningNote[] {
  return [
    curveNote(told),
    panesNote(told),
    memoryNote(told),
    sealNote(told),
    lobbyNote(told),
    roundNote(told),
    ductNote(told),
  ].filter((note) => note !== null)
}

function curveNote({ type, assumed }: Told): OpeningNote | null {
  if (type.loss.kind === 'contour') {
    const text =
      'Only one number is known of it: its curve is laid along the contour of that number, which is an assumption.'
    return { code: 'one-number', text }
  }
  if (type.loss.kind === 'as-the-wall' && type.loss.lessDb > 0) {
    const text = `Taken as the wall less ${type.loss.lessDb} dB in every band: common practice, no source.`
    return { code: 'wall-less', text }
  }
  if (assumed.length === 0) return null
  const text = 'Nothing is in print below 125 Hz: 63 Hz is taken 6 dB lower by the mass law, which is an assumption.'
  return { code: 'extended-below-125', text }
}

function memoryNote({ type }: Told): OpeningNote | null {
  if (type.source.status !== 'memory') return null
  return { code: 'from-memory', text: 'Its figure is recalled, not read in print: ask the maker for a test report.' }
}

function sealNote({ made, type, context }: Told): OpeningNote | null {
  const isWorn = made.seal !== 'good' || (made.second !== undefined && made.second.seal !== 'good')
  if (type.seals === 'cracks-included' && made.seal !== 'undercut') {
    return { code: 'cracks-included', text: 'Its printed figure has the usual cracks round the leaf in it.' }
  }
  if (!isWorn || type.seals === 'none') return null
  const under = made.seal === 'undercut' || made.second?.seal === 'undercut'
  const gap = under ? ` and ${table.seals.undercutGapMm} mm under an undercut leaf` : ''
  const why =
    context.kind === 'window' ? 'our own choice' : 'fitted to doors in print that were measured sealed and unsealed'
  const text = `Worn seals are counted as an open gap of ${wornGap(context.kind)} mm all round${gap}: ${why}.`
  return { code: 'seal-gap', text }
}

function lobbyNote({ made, type, context }: Told): OpeningNote | null {
  if (context.pairGapMm === null || type.loss.kind === 'pair' || made.second !== undefined) return null
  const text =
    'A lobby door is drawn and nothing is said of it: only the first door is counted. Say what the second door is.'
  return { code: 'lobby-not-said', text }
}

function panesNote({ type }: Told): OpeningNote | null {
  if (type.loss.kind !== 'panes') return null
  const text = 'Calculated for the panes alone with tight joints: above 1000 Hz windows in print are usually lower.'
  return { code: 'panes-alone', text }
}

function roundNote({ made, type, stc }: Told): OpeningNote | null {
  const isTwo = type.loss.kind === 'pair' || made.second !== undefined
  if (!isTwo || stc === null || stc <= ROUND_FROM_STC) return null
  const text = `Above about STC ${ROUND_FROM_STC} what goes round two doors, through frames, threshold and the wall between, decides: the figure is of the doors alone.`
  return { code: 'frames-decide', text }
}

function ductNote({ type }: Told): OpeningNote | null {
  if (type.loss.kind !== 'duct') return null
  const text =
    'It is closed round its duct as the wall is; what comes through the duct is counted as a path of its own.'
  return { code: 'duct-counted-apart', text }
}

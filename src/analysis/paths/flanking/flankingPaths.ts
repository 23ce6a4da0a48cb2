import type { BandCurve } from '#acoustics/bands.ts'
import { flatCurve, shiftCurve } from '#acoustics/curve.ts'
import table from '#analysis/data/junctions.json' with { type: 'json' }
import type { Path } from '#analysis/paths/answer.ts'
import { type Adjoining, adjoiningOf } from '#analysis/paths/flanking/adjoining.ts'
import { type Junction, type JunctionRule, junctionOf } from '#analysis/paths/flanking/junctions.ts'
import { limitCurve } from '#analysis/paths/flanking/limitCurve.ts'
import { liningGain } from '#analysis/paths/flanking/liningGain.ts'
import { named } from '#analysis/paths/names.ts'
import { type Found, NOTHING, type PathSetting } from '#analysis/paths/setting.ts'
import type { Note } from '#analysis/results.ts'
import type { SquareMetres } from '#units/quantity.ts'

/**
 * The ways round: by floor, junctions and frame into the next room. Counted between rooms only.
 * @param surfacePaths  the ways straight through the surfaces, which an allowance is made on
 */
export function flankingPaths(setting: PathSetting, surfacePaths: readonly Path[]): Found {
  const { receiver, crossed } = setting
  if (receiver.place.kind !== 'room' || crossed.length === 0) return NOTHING
  const junction = junctionOf(receiver.junction)
  const { rule } = junction
  switch (rule.kind) {
    case 'none':
      return { ...NOTHING, notes: [{ code: 'flanking-none', text: NONE }] }
    case 'allowance':
      return {
        ...NOTHING,
        paths: surfacePaths.map((path) => allowancePath(path, rule)),
        notes: [allowanceNote(junction, rule)],
      }
    default:
      return limitPaths(setting, junction, rule)
  }
}

const NONE = 'Nothing is counted for what goes round by floor, junctions and frame: the figure is a laboratory’s.'

type Allowance = Extract<JunctionRule, { kind: 'allowance' }>
type LimitRule = Extract<JunctionRule, { kind: 'limit' }>

/** What has to come beside a surface so that both together are louder by the allowance. */
function allowancePath(path: Path, { allowanceDb, sdDb }: Allowance): Path {
  const beside = 10 ** (allowanceDb / 10) - 1
  return {
    ...path,
    id: `flanking:${path.element}`,
    kind: 'flanking',
    label: `What goes round ${named(path.label)}`,
    lossDb: shiftCurve(path.lossDb, -10 * Math.log10(beside)),
    sdDb: path.sdDb.map((sd) => Math.hypot(sd, sdDb)),
    basis: 'assumed',
    notes: [],
  }
}

function allowanceNote({ name, source, status }: Junction, { allowanceDb }: Allowance): Note {
  const text = `What goes round is an allowance, not a calculation (${name}): surfaces are taken ${allowanceDb} dB weaker on site than in a laboratory. ${sentence(source)} Status: ${status}.`
  return { code: 'flanking-allowance', text }
}

function limitPaths({ input, receiver, crossed }: PathSetting, junction: Junction, rule: LimitRule): Found {
  const { adjoining, separatingM2 } = adjoiningOf(input.result.surfaces, crossed)
  if (!(separatingM2 > 0) || adjoining.length === 0) {
    return { ...NOTHING, notes: [{ code: 'flanking-nowhere', text: NOWHERE }] }
  }
  const beyondDb = table.linedBeyond[receiver.linedBeyond].gainDb
  const gains = adjoining.map(({ surface }) => liningGain(input, surface))
  const taken = gains.map(({ gainDb }) => shiftCurve(gainDb, beyondDb))
  return {
    ...NOTHING,
    paths: adjoining.map((one, at) => limitPath(one, separatingM2, rule, taken[at]!)),
    notes: [limitNote(junction, rule), ...beyondNotes(receiver.linedBeyond), ...gains.flatMap(({ notes }) => notes)],
  }
}

function limitPath(
  { surface, fraction }: Adjoining,
  areaM2: SquareMetres,
  { limitStc, sdDb }: LimitRule,
  takenDb: BandCurve,
): Path {
  const alone = -10 * Math.log10(fraction)
  return {
    id: `flanking:${surface.id}`,
    kind: 'flanking',
    label: `What runs along ${named(surface.label)}`,
    element: surface.id,
    areaM2,
    lossDb: limitCurve(limitStc).map((loss, band) => loss + alone + takenDb[band]!),
    sdDb: flatCurve(sdDb),
    basis: 'assumed',
    distanceMm: null,
    screenedDb: 0,
    notes: [],
  }
}

const NOWHERE = 'Sound goes through every surface that could carry it round, so nothing is counted for what goes round.'

function limitNote({ name, source, status }: Junction, { limitStc }: LimitRule): Note {
  const text = `What goes round is an assumption, not a calculation (${name}): all of it together is held to STC ${limitStc} with nothing lined, shared evenly by the surfaces beside, and a lining on one of them takes up to ${table.linedHere.mostDb} dB off its part. ${sentence(source)} Status: ${status}.`
  return { code: 'flanking-limit', text }
}

function beyondNotes(linedBeyond: 'none' | 'shared' | 'all'): readonly Note[] {
  if (linedBeyond !== 'shared') return []
  const text =
    'Lining only the neighbour’s side of the shared wall leaves the side walls and the floor talking: nothing is taken off what goes round for it.'
  return [{ code: 'lined-beyond-shared', text }]
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`
}

import { OCTAVES_HZ, octaveValues } from '#acoustics/bands.ts'
import { octaveLoss } from '#acoustics/curve.ts'
import { rateNic } from '#acoustics/noiseIsolation.ts'
import { A_WEIGHTS, C_WEIGHTS } from '#acoustics/weighting.ts'
import type { PathShare, ReceiverAnswer } from '#analysis/paths/answer.ts'
import { answerNotes, eachOnce, isBetweenRooms, lowestResonanceOf } from '#analysis/paths/answerNotes.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { noiseReduction, type PathEnergy, pathEnergy } from '#analysis/paths/energies.ts'
import { hearingOf } from '#analysis/paths/hearing.ts'
import { arriving, octaveLevels, overallLevel } from '#analysis/paths/levels.ts'
import { type Judged, judgedLimit } from '#analysis/paths/limits.ts'
import { type Margin, marginOf, type Playing, verdictOf, verdictWords } from '#analysis/paths/margin.ts'
import { pathsTo } from '#analysis/paths/pathsTo.ts'
import { weakestWords } from '#analysis/paths/sentence.ts'
import type { Found } from '#analysis/paths/setting.ts'
import { pathShares } from '#analysis/paths/shares.ts'
import { siteLossOf } from '#analysis/paths/siteLoss.ts'
import { type Played, playedAt } from '#analysis/paths/sourceLevels.ts'
import type { Receiver } from '#analysis/target.ts'
import type { Hertz } from '#units/quantity.ts'

/** What one receiver hears under a scheme, against its limit. */
export function answerReceiver(input: AnswerInput, receiver: Receiver): ReceiverAnswer {
  const hearing = hearingOf(input, receiver)
  const played = playedAt(input, receiver)
  const found = pathsTo(input, receiver)
  const energies = hearing.ok ? found.paths.map((path) => pathEnergy(path, hearing.value)) : []
  const missing = [
    ...(hearing.ok ? [] : [hearing.error]),
    ...(played.ok ? [] : [played.error]),
    ...found.unknown.map(({ why }) => why),
    ...noPath(receiver, found),
  ]
  return answerOf({ input, receiver, found, energies, played: played.ok ? played.value : null, missing })
}

/** A receiver that nothing reaches, as far as anybody has said. */
function noPath({ name, through }: Receiver, { paths, unknown }: Found): readonly string[] {
  if (paths.length > 0 || unknown.length > 0) return []
  return [
    through.length === 0
      ? `${name}: nobody has said which surfaces it is heard through. Choose them under Targets.`
      : `${name}: no sound goes through the surfaces chosen for it. Choose others under Targets.`,
  ]
}

interface Gathered {
  readonly input: AnswerInput
  readonly receiver: Receiver
  readonly found: Found
  /** Of the paths that are known. */
  readonly energies: readonly PathEnergy[]
  readonly played: Played | null
  /** Full sentences; empty: everything is known. */
  readonly missing: readonly string[]
}

function answerOf(gathered: Gathered): ReceiverAnswer {
  const { input, receiver, found, energies, played, missing } = gathered
  const judged = judgedLimit(receiver)
  const playing = playingOf(played)
  const isHeard = energies.length > 0
  const reached = isHeard && playing ? marginOf(energies, playing, judged) : null
  const margin = missing.length === 0 ? reached : null
  const shares = pathShares({ energies, playing, judged, reached, margin })
  const lowestHz = lowestResonanceOf(found.paths, input.result)
  return {
    receiverId: receiver.id,
    name: receiver.name,
    limit: receiver.limit,
    limitDb: judged.kind === 'curve' ? judged.limitDb : null,
    limitOverallDb: judged.kind === 'overall' ? judged.limitDb : null,
    sourceDb: played?.levelsDb ?? OCTAVES_HZ.map(() => null),
    ...levelsOf(energies, margin ? playing : null),
    ...differencesOf(gathered),
    ...marginsOf(margin, judged),
    paths: shares,
    unknown: found.unknown,
    siteLoss: found.unknown.length === 0 ? siteLossOf(found.paths) : null,
    sentence: sentenceOf(gathered, shares, margin),
    lowestResonanceHz: lowestHz,
    notes: eachOnce([
      ...answerNotes(receiver, played, lowestHz),
      ...knownOnly(gathered),
      ...found.notes,
      ...found.paths.flatMap(({ notes }) => notes),
    ]),
  }
}

function playingOf(played: Played | null): Playing | null {
  return played && { levelsDb: played.levelsDb, sdDb: played.source.sdDb }
}

type Levels = Pick<ReceiverAnswer, 'levelsDb' | 'levelsHigh95Db' | 'levelsLow95Db' | 'levelA' | 'levelC'>

/** `playing` null: something is missing, so no level is known. */
function levelsOf(energies: readonly PathEnergy[], playing: Playing | null): Levels {
  const none = OCTAVES_HZ.map(() => null)
  if (!playing) return { levelsDb: none, levelsHigh95Db: none, levelsLow95Db: none, levelA: null, levelC: null }
  const { levelsDb, sdDb } = playing
  const arrives = arriving(energies)
  const levels = octaveLevels(arrives, levelsDb, sdDb)
  return {
    levelsDb: levels.map((level) => level?.middle ?? null),
    levelsHigh95Db: levels.map((level) => level?.high ?? null),
    levelsLow95Db: levels.map((level) => level?.low ?? null),
    levelA: overallLevel(arrives, levelsDb, A_WEIGHTS, sdDb).middle,
    levelC: overallLevel(arrives, levelsDb, C_WEIGHTS, sdDb).middle,
  }
}

type Differences = Pick<ReceiverAnswer, 'noiseReductionDb' | 'differenceDb' | 'nic'>

/** What lies between the two sides, whatever is played. */
function differencesOf({ receiver, found, energies, played }: Gathered): Differences {
  if (energies.length === 0 || found.unknown.length > 0) {
    return { noiseReductionDb: null, differenceDb: octaveValues([]), nic: null }
  }
  const noiseReductionDb = noiseReduction(energies)
  const nic = isBetweenRooms(receiver, played?.source ?? null) ? rateNic(noiseReductionDb) : null
  return {
    noiseReductionDb,
    differenceDb: octaveValues(octaveLoss(noiseReductionDb)),
    nic: nic?.ok ? nic.value.value : null,
  }
}

type Margins = Pick<
  ReceiverAnswer,
  'marginDb' | 'marginLow95Db' | 'marginHigh95Db' | 'worstBandHz' | 'dominantBandHz' | 'verdict' | 'verdictWords'
>

function marginsOf(margin: Margin | null, judged: Judged): Margins {
  const decides: Hertz | null = margin && (OCTAVES_HZ[margin.decides] ?? null)
  return {
    marginDb: margin?.middle ?? null,
    marginLow95Db: margin?.low ?? null,
    marginHigh95Db: margin?.high ?? null,
    worstBandHz: judged.kind === 'curve' ? decides : null,
    dominantBandHz: judged.kind === 'overall' ? decides : null,
    verdict: margin ? verdictOf(margin) : 'not-known',
    verdictWords: verdictWords(margin),
  }
}

function sentenceOf(
  { input, receiver, missing }: Gathered,
  shares: readonly PathShare[],
  margin: Margin | null,
): string {
  if (missing.length > 0 || !margin) return missing.join(' ')
  return weakestWords(receiver, shares, margin.decides, input.result.surfaces)
}

/** Said where shares are of less than everything. */
function knownOnly({ found, played, energies }: Gathered): readonly { code: string; text: string }[] {
  if (energies.length === 0) return []
  const notes = []
  if (found.unknown.length > 0) {
    notes.push({
      code: 'shares-of-the-known',
      text: 'Shares are of the paths that are known; the others may carry more.',
    })
  }
  if (!played) {
    notes.push({
      code: 'shares-without-source',
      text: 'Shares are as for a source that is equally loud in all octaves.',
    })
  }
  return notes
}

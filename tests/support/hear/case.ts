import { OCTAVES_HZ, octaveValues } from '#acoustics/bands.ts'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import type { Source } from '#analysis/target.ts'

/** What the section is shown for. */
export interface HearCase {
  readonly answer: ReceiverAnswer
  readonly source: Source | null
  readonly backgroundNc: number
}

export const KIT_DB = [100, 103, 101, 100, 98, 97, 95]
export const BEDROOM_DB = [62, 60, 51, 44, 38, 33, 25]

/** A kit in a room and a bedroom that hears it; our own numbers. */
export function hearCase(change: Partial<ReceiverAnswer> = {}, rest: Partial<Omit<HearCase, 'answer'>> = {}): HearCase {
  return { answer: { ...bedroomAnswer(), ...change }, source: kitSource(), backgroundNc: 25, ...rest }
}

export function kitSource(change: Partial<Source> = {}): Source {
  return {
    id: 'source-1',
    name: 'Drum kit',
    preset: 'drum_kit_hard',
    levelsDb: octaveValues(KIT_DB),
    place: 'room-average',
    basis: 'memory',
    sdDb: 5,
    shakes: true,
    ...change,
  }
}

function bedroomAnswer(): ReceiverAnswer {
  return {
    receiverId: 'receiver-1',
    name: 'the bedroom',
    limit: { kind: 'NC', index: 25 },
    levelsDb: BEDROOM_DB,
    levelsLow95Db: BEDROOM_DB.map((level) => level - 8),
    levelsHigh95Db: BEDROOM_DB.map((level) => level + 8),
    limitDb: OCTAVES_HZ.map(() => 40),
    limitOverallDb: null,
    levelA: 47,
    levelC: 64,
    sourceDb: KIT_DB,
    noiseReductionDb: null,
    differenceDb: octaveValues(KIT_DB.map((level, octave) => level - BEDROOM_DB[octave]!)),
    nic: 50,
    marginDb: -16,
    marginLow95Db: -23.4,
    marginHigh95Db: -9,
    worstBandHz: 125,
    dominantBandHz: null,
    verdict: 'does-not-meet',
    verdictWords: 'does not meet',
    paths: [],
    unknown: [],
    siteLoss: null,
    sentence: '',
    lowestResonanceHz: null,
    notes: [],
  }
}

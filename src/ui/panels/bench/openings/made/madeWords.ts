import { OCTAVE_KEYS } from '#acoustics/bands.ts'
import { octaveLoss, SHOWN_LOSS_CAP_DB } from '#acoustics/curve.ts'
import { wholeLoss } from '#analysis/openings/sound.ts'
import type { Opening } from '#analysis/room.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import type { OpeningMade, OpeningType, SealCondition } from '#assemblies/opening.ts'
import type { OpeningSound } from '#assemblies/openingSound.ts'
import { likelyWords } from '#ui/panels/words.ts'
import { unreachable } from '#units/result.ts'

/** How the seals are, as a list offers it; a leaf that was tested with its cracks has none to wear. */
export function sealWords(seal: SealCondition, { seals }: Pick<OpeningType, 'seals'>): string {
  switch (seal) {
    case 'good':
      return seals === 'cracks-included' ? 'As tested, with its usual cracks' : 'In good order, as tested'
    case 'worn':
      return 'Worn or missing: open all round'
    case 'undercut':
      return seals === 'cracks-included' ? 'Cut off above the floor' : 'Cut off above the floor, worn elsewhere'
    default:
      return unreachable(seal)
  }
}

/** What has to be read where something is put into an opening, in full, each once. */
export function choiceCautions(
  made: OpeningMade,
  { openingTypes }: Pick<Catalogue, 'openingTypes'>,
): readonly string[] {
  const types = [made.type, made.second?.type].flatMap((id) => (id === undefined ? [] : [openingTypes.get(id)]))
  return [...new Set(types.flatMap((type) => type?.cautions ?? []))]
}

/** STC 27, likely 21-33. */
export function openingStcWords({ stc, likely }: Pick<OpeningSound, 'stc' | 'likely'>): string {
  if (stc === null || likely === null) return 'lets through all that meets it'
  return `STC ${stc}, ${likelyWords({ likely })}`
}

/** One octave of an opening's loss, seals and all. */
export interface OctaveRow {
  readonly hz: string
  readonly lossDb: number
  /** Extended by a rule: neither printed nor calculated. */
  readonly isAssumed: boolean
}

/** What an opening takes off in every octave, with the gap of its seals. */
export function octaveRows(sound: OpeningSound, opening: Opening): readonly OctaveRow[] {
  const octaves = octaveLoss(wholeLoss(sound, opening))
  return OCTAVE_KEYS.map((hz, index) => ({
    hz,
    lossDb: Math.min(SHOWN_LOSS_CAP_DB, octaves[index]!),
    isAssumed: sound.assumedOctaves.includes(hz),
  }))
}

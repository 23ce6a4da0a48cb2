import type { Opening } from '#analysis/room.ts'
import type { OpeningKind, OpeningMade, SealCondition } from '#assemblies/opening.ts'
import { openingSound } from '#assemblies/openingLoss.ts'
import type { OpeningContext, OpeningSound } from '#assemblies/openingSound.ts'
import { CATALOGUE, deepFreeze } from './samples.ts'

/** A door leaf of 900 x 2040 mm or another opening, in a wall nobody has rated. */
export function inOpening(kind: OpeningKind, change: Partial<OpeningContext> = {}): OpeningContext {
  const [widthMm, heightMm] = [change.widthMm ?? 900, change.heightMm ?? 2040]
  return {
    catalogue: CATALOGUE,
    kind,
    areaM2: (widthMm * heightMm) / 1e6,
    perimeterMm: 2 * (widthMm + heightMm),
    widthMm,
    heightMm,
    wall: null,
    pairGapMm: null,
    ...change,
  }
}

export function made(type: string, seal: SealCondition = 'good', more: Partial<OpeningMade> = {}): OpeningMade {
  return deepFreeze({ type, seal, ...more })
}

/** What goes through; throws where nothing is known. */
export function soundOf(what: OpeningMade, context: OpeningContext): OpeningSound {
  const sound = openingSound(what, context)
  if (!sound.ok) throw new Error(sound.error)
  return sound.value
}

/** The sentence said where nothing is known; throws where something is. */
export function refusedSound(what: OpeningMade, context: OpeningContext): string {
  const sound = openingSound(what, context)
  if (sound.ok) throw new Error('its sound is known')
  return sound.error
}

/** A door in the first wall, unless said otherwise. */
export function anOpening(change: Partial<Opening> = {}): Opening {
  return deepFreeze({
    id: 'opening-1',
    kind: 'door',
    name: 'Door',
    wall: 'wall-1',
    fromMm: 500,
    widthMm: 900,
    heightMm: 2040,
    sillMm: 0,
    hinge: 'from',
    swing: 'in',
    leaves: 'one',
    hungIn: 'existing',
    lobby: null,
    revealLiningMm: 0,
    shape: 'rectangular',
    ...change,
  })
}

import type { AnalysisInput } from '#analysis/analyse.ts'
import { list } from '#analysis/cautions/words.ts'
import { takesLiningOff } from '#analysis/depths.ts'
import type { Caution } from '#analysis/results.ts'
import type { Room, SurfaceFacts } from '#analysis/room.ts'
import { choiceFor } from '#analysis/scheme.ts'

interface Labelled {
  readonly label: string
  readonly facts: SurfaceFacts
}

/** What taking linings off brings up: fire, bracing, services, asbestos and lead. Always in full. */
export function liningCautions({ room, scheme }: AnalysisInput): readonly Caution[] {
  const removed = labelled(room).filter(({ facts }) => takesLiningOff(facts, choiceFor(scheme, facts.id)))
  return removed.length === 0 ? [] : liningRemovalCautions(removed)
}

/** The cautions of removing these surfaces' linings, whether or not the scheme does so yet. */
export function liningRemovalCautions(removed: readonly Labelled[]): readonly Caution[] {
  const surfaces = removed.map(({ facts }) => facts.id)
  const names = list(removed.map(({ label }) => label))
  const caution = (code: string, text: string): Caution => ({ code, kind: 'life-safety', text, surfaces })
  return [
    caution('lining-fire', fireText(removed)),
    caution(
      'lining-bracing',
      `${names}: the lining may brace the building against wind and earthquake; have a structural engineer say what replaces it before it comes off.`,
    ),
    caution(
      'lining-services',
      `${names}: cables, pipes and gas lines may run behind the lining; have them found and made dead before it is opened.`,
    ),
    caution(
      'lining-asbestos-lead',
      `${names}: boards, plaster, texture and paint of older buildings can hold asbestos or lead; have them tested by a licensed surveyor before anything is cut or broken.`,
    ),
  ]
}

function fireText(removed: readonly Labelled[]): string {
  const needed = removed.filter(({ facts }) => facts.lining?.neededForFire === 'yes').map(({ label }) => label)
  if (needed.length > 0) {
    return `${list(needed)}: the lining is marked as needed for fire separation; it must not come off without a rated replacement agreed with the building department.`
  }
  const unknown = removed.filter(({ facts }) => facts.lining?.neededForFire === 'unknown').map(({ label }) => label)
  if (unknown.length > 0) {
    return `${list(unknown)}: nobody has said whether the lining is needed for fire separation; find out from the building department before it comes off.`
  }
  return `${list(removed.map(({ label }) => label))}: the lining is marked as not needed for fire; the new build-up must still meet what local code asks of this wall.`
}

export function labelled(room: Room): readonly Labelled[] {
  return [
    ...room.walls.map((facts, index) => ({ label: `Wall ${index + 1}`, facts })),
    { label: 'Ceiling', facts: room.ceiling },
    { label: 'Floor', facts: room.floor },
  ]
}

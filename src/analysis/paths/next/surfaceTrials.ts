import { liningRemovalCautions } from '#analysis/cautions/lining.ts'
import { takesLiningOff } from '#analysis/depths.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { named } from '#analysis/paths/names.ts'
import type { Trial } from '#analysis/paths/next/trial.ts'
import { WRONG_GROUND } from '#analysis/paths/next/wrongGround.ts'
import type { SurfaceFacts } from '#analysis/room.ts'
import { type Choice, choiceFor } from '#analysis/scheme.ts'
import { AS_IS, type Assembly, type SurfaceKind } from '#assemblies/assembly.ts'
import { assembliesFor } from '#assemblies/catalogue.ts'
import { combineNotes } from '#assemblies/combineNotes.ts'

/** A surface and everything a step needs to know of it. */
interface Ground {
  readonly facts: SurfaceFacts
  readonly kind: SurfaceKind
  readonly label: string
  readonly choice: Choice
}

/** Everything else that could be built against a surface, its lining kept or taken off where that may be. */
export function surfaceTrials(input: AnswerInput, surfaceId: string): readonly Trial[] {
  const { room, result, scheme, catalogue } = input
  const facts = [...room.walls, room.ceiling, room.floor].find(({ id }) => id === surfaceId)
  const surface = result.surfaces.find(({ id }) => id === surfaceId)
  const existing = facts && catalogue.existing.get(facts.existing)
  if (!facts || !surface || !existing) return []
  const ground: Ground = { facts, kind: surface.kind, label: surface.label, choice: choiceFor(scheme, surfaceId) }
  const assemblies = [null, ...assembliesFor(surface.kind, existing.structure, catalogue)]
  return liningChoices(ground).flatMap((removeLining) =>
    assemblies
      .filter((assembly) => isOther(ground, assembly, removeLining))
      .filter((assembly) => {
        const lining = removeLining || !facts.lining ? null : asBoard(facts.lining)
        return !combineNotes({ existing, lining, assembly }).some(({ code }) => WRONG_GROUND.has(code))
      })
      .map((assembly) => trialOf(ground, assembly, removeLining)),
  )
}

function asBoard(lining: NonNullable<SurfaceFacts['lining']>) {
  const { thicknessMm, material } = lining
  return { kind: 'board', material: material ?? 'gypsum-regular', thicknessMm } as const
}

/**
 * Whether the lining may be kept and may come off: one that fire separation needs stays on, and one of which nobody has
 * said so is left as the scheme has it.
 */
function liningChoices({ facts, choice }: Ground): readonly boolean[] {
  switch (facts.lining?.neededForFire) {
    case undefined:
      return [choice.removeLining]
    case 'yes':
      return [false]
    case 'unknown':
      return [choice.removeLining]
    case 'no':
      return [false, true]
  }
}

/** Not what stands in the scheme already; a lining is taken off to build something, not for itself. */
function isOther({ facts, choice }: Ground, assembly: Assembly | null, removeLining: boolean): boolean {
  if (assembly === null) return choice.assembly !== AS_IS && removeLining === choice.removeLining
  const isSameLining = takesLiningOff(facts, { ...choice, removeLining }) === takesLiningOff(facts, choice)
  return assembly.id !== choice.assembly || !isSameLining
}

function trialOf(ground: Ground, assembly: Assembly | null, removeLining: boolean): Trial {
  const { facts, label, choice } = ground
  const changed: Choice = { ...choice, assembly: assembly?.id ?? AS_IS, removeLining }
  const comesOff = takesLiningOff(facts, changed) && !takesLiningOff(facts, choice)
  return {
    label: labelOf(ground, assembly, comesOff, takesLiningOff(facts, choice) && !takesLiningOff(facts, changed)),
    change: { choices: { [facts.id]: changed } },
    cautions: comesOff ? liningRemovalCautions([{ label, facts }]).map(({ text }) => text) : [],
    minds: assembly?.cautions ?? [],
  }
}

function labelOf(ground: Ground, assembly: Assembly | null, comesOff: boolean, staysOn: boolean): string {
  const label = named(ground.label)
  if (assembly === null) return `Leave ${label} as it stands`
  const build = `uild ${label} as ${assembly.shortName}`
  if (comesOff) return `Take the lining off ${label} and b${build}`
  if (staysOn) return `Keep the lining of ${label} and b${build}`
  return `B${build}`
}

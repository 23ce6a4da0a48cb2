import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { ductMade } from '#analysis/paths/ductPaths.ts'
import steps from '#analysis/paths/next/data/ductSteps.json' with { type: 'json' }
import type { Trial } from '#analysis/paths/next/trial.ts'
import type { DuctMade } from '#analysis/room.ts'

/** Lining a duct all along, or a silencer in it, from a short list with its sources in data/ductSteps.json. */
export function ductTrials({ room, scheme }: AnswerInput, ductId: string): readonly Trial[] {
  const duct = room.ducts?.find(({ id }) => id === ductId)
  if (!duct) return []
  const made = ductMade(duct, scheme)
  const trial = (label: string, change: Partial<DuctMade>, cautions: readonly string[]): Trial => ({
    label,
    change: { ducts: { [ductId]: { ...made, ...change } } },
    cautions,
  })
  return [
    ...steps.linings.map(({ liningMm }) =>
      trial(`Line ${duct.name} all along, ${liningMm} mm`, { liningMm, linedLengthMm: duct.lengthMm }, []),
    ),
    ...steps.silencers.map(({ name, step, insertionLossDb, room: takes }) =>
      trial(`Fit ${step} in ${duct.name}`, { silencer: { name, insertionLossDb } }, [takes]),
    ),
  ]
}

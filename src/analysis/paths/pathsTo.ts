import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { crossedBy } from '#analysis/paths/crossed.ts'
import { ductPaths } from '#analysis/paths/ductPaths.ts'
import { flankingPaths } from '#analysis/paths/flanking/flankingPaths.ts'
import { leakPaths } from '#analysis/paths/leakPaths.ts'
import { openingPaths } from '#analysis/paths/openingPaths.ts'
import { type Found, joined, NOTHING, type PathSetting } from '#analysis/paths/setting.ts'
import { surfacePaths } from '#analysis/paths/surfacePaths.ts'
import type { Receiver } from '#analysis/target.ts'

/**
 * Every way sound gets from the source to a receiver under a scheme, those of which nothing is known, and what was left
 * out or taken for granted: through surfaces, openings and their seals, past edges and through holes, by ducts, and round.
 */
export function pathsTo(input: AnswerInput, receiver: Receiver): Found {
  const { crossed, gone } = crossedBy(input, receiver)
  const setting: PathSetting = { input, receiver, crossed }
  const surfaces = surfacePaths(setting)
  return joined([
    { ...NOTHING, unknown: gone },
    surfaces,
    openingPaths(setting),
    leakPaths(setting),
    ductPaths(setting),
    ductsAlone(setting),
    flankingPaths(setting, surfaces.paths),
  ])
}

/** A duct is heard without any wall: what comes through walls nobody has named is not known to be nothing. */
function ductsAlone({ input: { room }, receiver: { id, name, through } }: PathSetting): Found {
  if (through.length > 0 || !room.ducts?.some(({ leadsTo }) => leadsTo.includes(id))) return NOTHING
  const text = `${name}: only what comes by ducts is counted, for nobody has said which surfaces it is heard through. Choose them under Targets if it is next to this room.`
  return { ...NOTHING, notes: [{ code: 'ducts-alone', text }] }
}

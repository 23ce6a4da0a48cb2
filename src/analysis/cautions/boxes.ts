import type { Caution, SchemeResult } from '#analysis/results.ts'

/** Said of the furniture as well, in the same breath. */
const SAID_OF_FURNITURE = 'box-in-furniture'
/** Somebody may have to leave or be let out that way. */
const IN_THE_WAY = 'box-before-opening'

/** What keeps a silencer box from its place. */
export function boxCautions({ boxes }: Pick<SchemeResult, 'boxes'>): Caution[] {
  return boxes.flatMap(({ problems }) =>
    problems
      .filter(({ code }) => code !== SAID_OF_FURNITURE)
      .map(({ code, text }): Caution => {
        return { code, kind: code === IN_THE_WAY ? 'life-safety' : 'check', text, surfaces: [] }
      }),
  )
}

import type { Caution, SchemeResult } from '#analysis/results.ts'

/** What keeps a piece of furniture from its place. */
export function furnitureCautions({ furniture }: Pick<SchemeResult, 'furniture'>): Caution[] {
  return furniture.flatMap(({ problems }) =>
    problems.map(({ code, text }): Caution => ({ code, kind: 'check', text, surfaces: [] })),
  )
}

import type { AnalysisInput } from '#analysis/analyse.ts'
import { heightCautions } from '#analysis/cautions/heights.ts'
import { labelled } from '#analysis/cautions/lining.ts'
import limits from '#analysis/data/limits.json'
import type { Caution, SchemeResult } from '#analysis/results.ts'
import { formatArea } from '#units/format.ts'

type Result = Omit<SchemeResult, 'cautions'>

/** Warnings of the geometry that are worth a designer's look; the others are said in words of their own below. */
const TOLD: readonly string[] = ['tiny-edge', 'merged-edge', 'small-part', 'obstacle-outside']

/** What the geometry says in words: swallowed walls, a split room, nothing left, sides too alike, heights that do not fit. */
export function spaceCautions(input: AnalysisInput, result: Result): readonly Caution[] {
  const { room } = input
  const swallowed = result.surfaces.filter((surface) => surface.swallowed)
  return [
    ...swallowed.map((surface) =>
      check('swallowed', `${surface.label} has no face left in the clear room: its neighbours' linings cover it.`, [
        surface.id,
      ]),
    ),
    ...partCautions(result),
    ...(result.inset.warnings ?? [])
      .filter(({ code }) => TOLD.includes(code))
      .map((warning) => check(warning.code, warning.message, wallIds(room, warning.walls))),
    ...sideCautions(result),
    ...heightCautions(input, result),
  ]
}

function partCautions({ clear }: Result): readonly Caution[] {
  if (clear.length === 0) return [check('nothing-left', 'The linings meet: no clear floor is left.', [])]
  if (clear.length === 1) return []
  const parts = clear.map((part) => formatArea(part.areaMm2 / 1e6, 'mm')).join(', ')
  return [check('split', `The linings cut the clear room into ${clear.length} parts of ${parts}.`, [])]
}

function sideCautions({ ledger }: Result): readonly Caution[] {
  const { width, length } = ledger.clearSizeMm
  if (width <= 0 || length <= 0) return []
  const ratio = Math.max(width, length) / Math.min(width, length)
  const near = [1, 2].find((whole) => Math.abs(ratio / whole - 1) <= limits.sidesTooEqual.value)
  if (near === undefined) return []
  const words = near === 1 ? 'nearly equal' : 'nearly one to two'
  return [
    check('equal-sides', `The clear length and width are ${words}, so their first room modes fall on one another.`, []),
  ]
}

function wallIds(room: AnalysisInput['room'], walls: readonly number[]): readonly string[] {
  return walls.flatMap((index) => labelled(room)[index]?.facts.id ?? [])
}

function check(code: string, text: string, surfaces: readonly string[]): Caution {
  return { code, kind: 'check', text, surfaces }
}

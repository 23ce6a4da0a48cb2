import type { SchemeChange } from '#analysis/scheme.ts'
import type { SquareMetres } from '#units/quantity.ts'

/** One single change that could be made for the sake of a path, before anybody knows what it brings. */
export interface Trial {
  /** In the imperative: "Build Wall 2 as clips + 2 boards". */
  readonly label: string
  readonly change: SchemeChange
  /** What must be read before it is built; the scheme's own cautions come on top. */
  readonly cautions: readonly string[]
  /** What the assembly asks to be minded while it is built; absent: nothing. */
  readonly minds?: readonly string[] | undefined
  /** Floor it takes that the plan does not draw, so that the ledger does not know of it; absent: none. */
  readonly takesM2?: SquareMetres | undefined
}

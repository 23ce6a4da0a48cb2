import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Frame } from '#drawing/frame.ts'
import type { Box } from '#drawing/model.ts'
import type { Placer } from '#drawing/place.ts'
import type { PlanShares } from '#drawing/plan/shares.ts'
import type { WallLine } from '#drawing/plan/wallLines.ts'
import type { PlanStyle } from '#drawing/style.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** Which parts of a plan are drawn; absent: all but the grid. */
export interface PlanParts {
  readonly grid?: boolean | undefined
  readonly hatches?: boolean | undefined
  /** false: shapes only, and nothing that finds its place beside them. */
  readonly words?: boolean | undefined
  readonly openings?: boolean | undefined
  /** Furniture, height points and ceiling parts. */
  readonly things?: boolean | undefined
  readonly tags?: boolean | undefined
  /** Depth and rating beside the tags. */
  readonly ratings?: boolean | undefined
  readonly dimensions?: boolean | undefined
  readonly clearDimensions?: boolean | undefined
  /** Name, clear area and clear height in the middle of the room. */
  readonly roomLabel?: boolean | undefined
  readonly scaleBar?: boolean | undefined
  /** What the shares are of, in words. */
  readonly shareKey?: boolean | undefined
}

/** What a plan is drawn from. */
export interface PlanInput {
  readonly room: Room
  /** null: only what stands there. */
  readonly result: SchemeResult | null
  readonly frame: Frame
  readonly style: PlanStyle
  readonly units: LengthUnit
  /** Other rooms of the project: drawn faintly, by outline and name. */
  readonly others?: readonly Room[] | undefined
  /** Ids of selected surfaces and things: drawn in the accent. */
  readonly selection?: readonly string[] | undefined
  /** By which way a receiver hears the room; absent: not shown. */
  readonly shares?: PlanShares | undefined
  readonly show?: PlanParts | undefined
  /** What can be seen of the target: the grid fills it and labels keep inside; absent: no bound. */
  readonly view?: Box | undefined
}

/** The input with what every part of the plan needs. */
export interface PlanContext extends PlanInput {
  readonly walls: readonly WallLine[]
  readonly placer: Placer
  readonly isSelected: (id: string) => boolean
}

import type { Frame } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import type { Project } from '#project/project.ts'
import type { Thing } from '#state/view.ts'
import { AddOverlay } from '#ui/canvas/AddOverlay.tsx'
import type { HandlePlace } from '#ui/canvas/hitThings.ts'
import type { PlanRoom } from '#ui/canvas/planRoom.ts'
import { SelectOverlay } from '#ui/canvas/SelectOverlay.tsx'
import type { Size } from '#ui/canvas/usePlanFrame.ts'
import type { PlanTool } from '#ui/canvas/usePlanTools.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface Props {
  readonly project: Project
  readonly room: PlanRoom
  readonly frame: Frame
  readonly size: Size
  readonly units: LengthUnit
  readonly palette: Palette
  readonly hand: PlanTool
  readonly isCut: boolean
  readonly cornerId: string | null
  readonly handles: ReadonlySet<string>
  readonly thing: Thing | null
  readonly thingHandles: readonly HandlePlace[]
}

/** What the tool in the hand adds to the drawing. */
export function HandOverlay({ hand, isCut, ...rest }: Props) {
  if (hand.add) return <AddOverlay {...rest} state={hand.add} isCut={isCut} />
  return <SelectOverlay {...rest} state={hand.select} />
}

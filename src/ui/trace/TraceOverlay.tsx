import type { Frame } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import type { Underlay } from '#project/project.ts'
import { CalibrateOverlay } from '#ui/canvas/CalibrateOverlay.tsx'
import { UnderlayFrame, UnderlaySays } from '#ui/canvas/UnderlayLayer.tsx'
import { useShownProject, useView } from '#ui/session.ts'
import { useTrace } from '#ui/shell.ts'
import { useTurnable } from '#ui/trace/useTurnPicture.ts'

interface Props {
  readonly underlays: readonly Underlay[]
  readonly frame: Frame
  readonly palette: Palette
}

/** Above the plan: what is wrong with a picture, the points of a calibration, or the frame of the selected one. */
export function TraceOverlay({ underlays, frame, palette }: Props) {
  const isCalibrating = useView((view) => view.tool === 'calibrate')
  const calibrating = useTrace((state) => state.calibrating)
  const turnable = useTurnable(useShownProject())
  return (
    <>
      {underlays
        .filter(({ isShown }) => isShown)
        .map((underlay) => (
          <UnderlaySays key={underlay.id} {...{ underlay, frame, palette }} />
        ))}
      {isCalibrating && calibrating && <CalibrateOverlay {...{ calibrating, frame, palette }} />}
      {turnable && <UnderlayFrame {...{ underlay: turnable, frame, palette }} />}
    </>
  )
}

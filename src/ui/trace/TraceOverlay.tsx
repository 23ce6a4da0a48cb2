import type { Frame } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import { CalibrateOverlay } from '#ui/canvas/CalibrateOverlay.tsx'
import { UnderlayFrame } from '#ui/canvas/UnderlayLayer.tsx'
import { useShownProject, useView } from '#ui/session.ts'
import { useTrace } from '#ui/shell.ts'
import { useTurnable } from '#ui/trace/useTurnPicture.ts'

interface Props {
  readonly frame: Frame
  readonly palette: Palette
}

/** Above the plan: the points of a calibration, or the frame of the selected picture. */
export function TraceOverlay({ frame, palette }: Props) {
  const isCalibrating = useView((view) => view.tool === 'calibrate')
  const calibrating = useTrace((state) => state.calibrating)
  const turnable = useTurnable(useShownProject())
  if (isCalibrating) return calibrating && <CalibrateOverlay {...{ calibrating, frame, palette }} />
  return turnable && <UnderlayFrame {...{ underlay: turnable, frame, palette }} />
}

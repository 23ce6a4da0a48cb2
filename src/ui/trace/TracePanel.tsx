import { useShownProject, useView } from '#ui/session.ts'
import { useTrace } from '#ui/shell.ts'
import { CalibrateRow } from '#ui/trace/CalibrateRow.tsx'
import { PdfRow } from '#ui/trace/PdfRow.tsx'
import { PickPicture } from '#ui/trace/PickPicture.tsx'
import { UnderlayRow } from '#ui/trace/UnderlayRow.tsx'

/** Pictures to trace, under the plan's verbs; the same fields serve hand and keyboard. */
export function TracePanel() {
  const isOpen = useTrace((state) => state.isOpen)
  const tool = useView((view) => view.tool)
  const calibrating = useTrace((state) => state.calibrating)
  const pdf = useTrace((state) => state.pdf)
  const { underlays } = useShownProject()
  if (!isOpen || tool === 'draw') return null
  const calibrated = underlays.find(({ id }) => id === calibrating?.underlayId)
  if (tool === 'calibrate' && calibrating && calibrated) {
    return <CalibrateRow calibrating={calibrating} underlay={calibrated} />
  }
  return (
    <section className="trace" aria-label="Pictures to trace">
      {underlays.length > 0 && (
        <ul className="trace-list">
          {underlays.map((underlay) => (
            <UnderlayRow key={underlay.id} underlay={underlay} />
          ))}
        </ul>
      )}
      {pdf && <PdfRow pdf={pdf} />}
      <LoadLine />
    </section>
  )
}

function LoadLine() {
  const busy = useTrace((state) => state.busy)
  const hasNone = useShownProject().underlays.length === 0
  return (
    <div className="trace-load">
      <PickPicture label="Load picture" replaces={null} className="action plain" />
      <p role="status" className="quiet">
        {busy ??
          (hasNone ? 'A PNG or JPEG photo or scan, or a PDF. It may also be dropped on the page, or pasted.' : '')}
      </p>
    </div>
  )
}

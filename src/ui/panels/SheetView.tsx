import { type CSSProperties, useMemo, useState } from 'react'
import { PALETTES } from '#drawing/palette.ts'
import type { PaperName } from '#drawing/sheet/sheetInput.ts'
import { sheetDrawing } from '#drawing/sheet.ts'
import { FONT_FAMILY } from '#drawing/text.ts'
import { textSummary } from '#reports/summary.ts'
import { MarksSvg } from '#ui/charts/MarksSvg.tsx'
import { SheetBar, type Turn } from '#ui/panels/sheet/SheetBar.tsx'
import { useSheetHeard } from '#ui/panels/sheet/useSheetHeard.ts'
import { useAnalysis, useRoom, useShownProject } from '#ui/session.ts'

/** The paper keeps its own colours, whatever the page wears. */
const PAPER_COLOURS = {
  ...Object.fromEntries(Object.entries(PALETTES.print).map(([token, colour]) => [`--${token}`, colour])),
  fontFamily: `"${FONT_FAMILY}", sans-serif`,
} as CSSProperties

/** The sheet exactly as it will be handed over, in place of the plan. */
export function SheetView() {
  const project = useShownProject()
  const room = useRoom()
  const analysis = useAnalysis()
  const [paper, setPaper] = useState<PaperName>(project.units === 'mm' ? 'a4' : 'letter')
  const [turn, setTurn] = useState<Turn>('landscape')
  const { name, note, units } = project
  const result = analysis.ok ? analysis.value : null
  const heard = useSheetHeard(result)
  const drawing = useMemo(
    () =>
      result &&
      sheetDrawing({
        projectName: name,
        note,
        room,
        result,
        units,
        heard,
        date: today(),
        paper,
        landscape: turn === 'landscape',
      }),
    [name, note, room, result, units, heard, paper, turn],
  )
  return (
    <section aria-label="Sheet" className="sheet-view">
      <SheetBar {...{ paper, setPaper, turn, setTurn, drawing }} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="sheet-desk" aria-label="The sheet on paper" tabIndex={0}>
        {!analysis.ok && (
          <p className="ledger-refusal" role="alert">
            <span className="warn-sign" aria-hidden="true" />
            There is no sheet to hand over: {analysis.error.message}
          </p>
        )}
        {drawing && result && (
          <div className="sheet-paper" style={PAPER_COLOURS}>
            <svg viewBox={`0 0 ${drawing.widthMm} ${drawing.heightMm}`} aria-hidden="true">
              <MarksSvg marks={drawing.marks} />
            </svg>
            <p className="visually-hidden">
              {textSummary(name, [{ room, results: [result], heard: heard && [heard] }], units)}
            </p>
          </div>
        )}
      </section>
    </section>
  )
}

/** The day the sheet is drawn, as 2026-03-09. */
function today(): string {
  const now = new Date()
  const two = (part: number) => String(part).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

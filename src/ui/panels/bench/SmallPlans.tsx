import type { Room } from '#analysis/room.ts'
import { boundsOf, fitFrame } from '#drawing/frame.ts'
import { planMarks } from '#drawing/plan.ts'
import { SCREEN_STYLE } from '#drawing/style.ts'
import { MarksSvg } from '#ui/charts/MarksSvg.tsx'
import type { ComparedScheme } from '#ui/panels/bench/Compare.tsx'
import { schemeTitle } from '#ui/panels/words.ts'
import { formatArea } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** Room for the plans in one row, and the tallest one. */
const ROW_WIDTH = 640
const HEIGHT = 128
/** Narrower than this no caption fits under a plan. */
const LEAST_WIDTH = 92
/** Thinner than the plan's: the same drawing, smaller. */
const STYLE = { ...SCREEN_STYLE, heavy: 2, medium: 1, fine: 0.75, hair: 0.5 }
const SHOWN = {
  dimensions: false,
  clearDimensions: false,
  tags: false,
  roomLabel: false,
  scaleBar: false,
  openings: true,
} as const

interface Props {
  readonly room: Room
  readonly compared: readonly ComparedScheme[]
  readonly units: LengthUnit
}

/** Every scheme's plan at one scale, so that the eye compares what the numbers say. */
export function SmallPlans({ room, compared, units }: Props) {
  const bounds = boundsOf(room.corners.map((corner) => [corner.xMm, corner.yMm] as const))
  const most = Math.max(LEAST_WIDTH, Math.min(230, ROW_WIDTH / Math.max(1, compared.length)))
  const across = ((bounds.maxX - bounds.minX) / Math.max(1, bounds.maxY - bounds.minY)) * (HEIGHT - 12) + 12
  const width = Math.round(Math.min(most, Math.max(LEAST_WIDTH, across)))
  const frame = fitFrame(bounds, width, HEIGHT, 6)
  return (
    <div className="small-plans">
      {compared.map((entry) => {
        const { scheme, result } = entry
        const kept = result ? `${formatArea(result.ledger.floorAreaM2.clear, units)} clear` : 'not computed'
        return (
          <figure key={scheme.id} style={{ width }}>
            <svg width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} role="img">
              <title>{`Plan of ${scheme.name}, ${kept}`}</title>
              <MarksSvg marks={withoutLabels(planMarks({ room, result, frame, style: STYLE, units, show: SHOWN }))} />
            </svg>
            <figcaption>
              <strong>{schemeTitle(scheme.name, entry.letter)}</strong> {kept}
            </figcaption>
          </figure>
        )
      })}
    </div>
  )
}

/** At this size words would be read by nobody. */
function withoutLabels(marks: ReturnType<typeof planMarks>) {
  return marks.filter((mark) => mark.kind !== 'text')
}

import { useMemo } from 'react'
import type { FarSide } from '#analysis/room.ts'
import { layersDepth } from '#assemblies/layer.ts'
import type { Mark } from '#drawing/model.ts'
import { sectionMarks } from '#drawing/section.ts'
import { SCREEN_STYLE } from '#drawing/style.ts'
import { MarksSvg } from '#ui/charts/MarksSvg.tsx'
import type { RulerLayout } from '#ui/charts/rulerLayout.ts'
import { type Candidate, depthFrom, type Face } from '#ui/panels/bench/candidates.ts'
import { useShownProject } from '#ui/session.ts'

const TOP = 16
const CUT_HEIGHT = 32
/** The cut, the word over it and the dimensions under it. */
export const SECTION_HEIGHT = TOP + CUT_HEIGHT + 50

/** One or two words at the far end of the section. */
const FAR_WORDS: Readonly<Record<FarSide, string>> = {
  neighbour: 'neighbour',
  outdoors: 'outdoors',
  'own-house': 'house',
  soil: 'soil',
  nothing: '',
}

interface Props {
  readonly candidate: Candidate
  readonly layout: Pick<RulerLayout, 'x'>
  readonly width: number
  readonly face: Face
  readonly farSide: FarSide
}

/** The build-up cut through, on the same inches as the ruler: what stands left of zero, what is built right of it. */
export function SectionView({ candidate, layout, width, face, farSide }: Props) {
  const { units } = useShownProject()
  const { x } = layout
  const left = x.range()[0]!
  const depthMm = depthFrom(candidate, face)
  const { layers } = candidate.described
  const isCutOff = x(depthMm - layersDepth(layers)) < left - 0.5
  const marks = useMemo(
    () =>
      sectionMarks({
        layers,
        depthMm,
        zeroX: x(0),
        scale: x(1) - x(0),
        top: TOP,
        height: CUT_HEIGHT,
        style: SCREEN_STYLE,
        units,
        words: {
          far: FAR_WORDS[farSide],
          zero: face === 'structure' ? 'bare structure' : 'finished face',
          room: 'room',
        },
        left,
      }).filter((mark) => !isWholeDepth(mark)),
    [layers, depthMm, x, units, farSide, face, left],
  )
  return (
    <svg
      className="section-view"
      width={width}
      height={SECTION_HEIGHT}
      viewBox={`0 0 ${width} ${SECTION_HEIGHT}`}
      role="img"
    >
      <title>{`Section: ${candidate.name}`}</title>
      <MarksSvg marks={marks} />
      {isCutOff && <BreakLine x={left} />}
    </svg>
  )
}

/** The row for all layers together: the ruler above says that depth already, on the same inches. */
function isWholeDepth(mark: Mark): boolean {
  if (mark.role !== 'dimension') return false
  return mark.kind === 'text' ? mark.colour === 'accent' : mark.kind === 'lines' && mark.stroke.colour === 'accent'
}

/** The drafting sign for what goes on beyond the drawing. */
function BreakLine({ x }: { readonly x: number }) {
  const middle = TOP + CUT_HEIGHT / 2
  const path = `M${x} ${TOP - 5}V${middle - 7}L${x - 5} ${middle - 3}L${x + 5} ${middle + 3}L${x} ${middle + 7}V${TOP + CUT_HEIGHT + 5}`
  return <path className="break-line" d={path} />
}

import { OCTAVES_HZ } from '#acoustics/bands.ts'
import type { DrawnLevels, LevelScales } from '#ui/charts/levelScale.ts'
import { type LabelWish, placeLabels } from '#ui/charts/placeLabels.ts'
import type { Decibels } from '#units/quantity.ts'

interface Props {
  readonly levels: DrawnLevels
  readonly scales: LevelScales
  readonly width: number
}

/** The three curves by name, each beside itself where it meets nothing. */
export function LevelNames({ levels, scales, width }: Props) {
  const { y } = scales
  const [bottom = 0, top = 0] = y.range()
  const curves: readonly Named[] = [
    { id: 'at', text: 'at the receiver', list: levels.levelsDb },
    { id: 'limit', text: 'limit', list: levels.limitDb ?? [] },
    { id: 'source', text: 'source', list: levels.sourceDb },
  ]
  const labels = placeLabels(
    curves.flatMap((curve) => wishFor(curve, scales)),
    {
      size: 13,
      within: { x: 46, y: 0, width: width - 46, height: bottom },
      taken: curves.flatMap(({ list }) => boxesOf(list, scales)),
    },
  )
  return (
    <g>
      {labels.map((label) => (
        <text
          key={label.id}
          x={label.x}
          y={Math.max(label.y, top)}
          textAnchor={label.anchor}
          className={label.id === 'at' ? 'curve-name-shown' : 'curve-word'}
        >
          {label.text}
        </text>
      ))}
    </g>
  )
}

interface Named {
  readonly id: string
  readonly text: string
  readonly list: readonly (Decibels | null)[]
}

/** Towards the high octaves, where curves are apart. */
const WISHED_OCTAVE = 4

function wishFor({ id, text, list }: Named, { x, y }: LevelScales): readonly LabelWish[] {
  const octave = list[WISHED_OCTAVE] == null ? list.findLastIndex((level) => level !== null) : WISHED_OCTAVE
  const level = list[octave]
  return level == null ? [] : [{ id, text, x: x(octave), y: y(level), radius: 5 }]
}

/** Small boxes along a curve, so that names keep off it. */
function boxesOf(list: readonly (Decibels | null)[], { x, y }: LevelScales) {
  const steps = 6
  return OCTAVES_HZ.flatMap((_, octave) => {
    const [from, to] = [list[octave], list[octave + 1]]
    if (from == null || to == null) return []
    return Array.from({ length: steps }, (__, step) => {
      const share = step / steps
      const [left, level] = [octave + share, from * (1 - share) + to * share]
      return { x: x(left) - 3, y: y(level) - 3, width: 6, height: 6 }
    })
  })
}

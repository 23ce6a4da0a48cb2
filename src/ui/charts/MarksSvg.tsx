import { memo, type ReactNode } from 'react'
import type { Mark, Stroke } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { arcPath, ringsPath, runsPath } from '#ui/charts/paths.ts'
import { unreachable } from '#units/result.ts'

interface Props {
  readonly marks: readonly Mark[]
}

/** The drawing's own marks as SVG elements, in the colours of the page. */
export const MarksSvg = memo(function MarksSvg({ marks }: Props) {
  return <>{marks.map((mark, index) => markElement(mark, `${mark.role}-${index}`))}</>
})

/** A colour of the palette as the page's style sheet holds it. */
export function colour(token: ColourToken): string {
  return `var(--${token})`
}

function strokeProps(stroke: Stroke | null) {
  if (stroke === null) return {}
  const dash = stroke.dash ? { strokeDasharray: stroke.dash.join(' ') } : {}
  return { stroke: colour(stroke.colour), strokeWidth: stroke.width, ...dash }
}

function fillOf(token: ColourToken | null): string {
  return token === null ? 'none' : colour(token)
}

function markElement(mark: Mark, key: string): ReactNode {
  switch (mark.kind) {
    case 'polygon':
      return (
        <path
          key={key}
          d={ringsPath(mark.rings)}
          fillRule="evenodd"
          fill={fillOf(mark.fill)}
          {...strokeProps(mark.stroke)}
        />
      )
    case 'lines':
      return <path key={key} d={runsPath(mark.runs)} fill="none" {...strokeProps(mark.stroke)} />
    case 'circle':
      return (
        <circle
          key={key}
          cx={mark.x}
          cy={mark.y}
          r={mark.radius}
          fill={fillOf(mark.fill)}
          {...strokeProps(mark.stroke)}
        />
      )
    case 'arc':
      return <path key={key} d={arcPath(mark)} fill="none" {...strokeProps(mark.stroke)} />
    case 'text':
      return (
        <text
          key={key}
          x={mark.x}
          y={mark.y}
          fontSize={mark.size}
          fontWeight={mark.weight}
          textAnchor={mark.anchor}
          fill={colour(mark.colour)}
          {...(mark.rotation === 0 ? {} : { transform: `rotate(${mark.rotation} ${mark.x} ${mark.y})` })}
        >
          {mark.text}
        </text>
      )
    default:
      return unreachable(mark)
  }
}

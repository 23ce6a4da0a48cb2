import type { CavityLink } from '#assemblies/layer.ts'
import { withSpacings } from '#assemblies/usualLayer.ts'
import { LengthField } from '#ui/fields/LengthField.tsx'
import type { CavityProps } from '#ui/panels/bench/editor/CavityFields.tsx'
import { useBuilding } from '#ui/panels/bench/editor/useBuilding.ts'
import { useShownProject } from '#ui/session.ts'
import type { Millimetres } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

interface Spacing {
  readonly name: string
  readonly label: string
  readonly value: Millimetres
  readonly set: (value: Millimetres) => CavityLink
}

/** Every spacing that a link is told by. */
export function SpacingFields({ layerKey, cavity }: CavityProps) {
  const { setLayer, kept } = useBuilding()
  const { units } = useShownProject()
  return spacingsOf(cavity.link).map(({ name, label, value, set }) => (
    <LengthField
      key={name}
      name={`link-${name}`}
      label={label}
      value={value}
      unit={units}
      kept={kept(`${layerKey} ${name}`)}
      onCommit={(length) => {
        setLayer(layerKey, withSpacings(cavity, set(length)))
        return null
      }}
    />
  ))
}

function spacingsOf(link: CavityLink): readonly Spacing[] {
  switch (link.kind) {
    case 'none':
      return []
    case 'wood-stud':
    case 'light-steel-stud':
    case 'load-bearing-steel-stud':
    case 'staggered-stud':
      return [
        {
          name: 'stud-spacing',
          label: 'Stud spacing',
          value: link.spacingMm,
          set: (spacingMm) => ({ ...link, spacingMm }),
        },
      ]
    case 'resilient-channel':
      return [
        {
          name: 'channel-spacing',
          label: 'Channel spacing',
          value: link.channelSpacingMm,
          set: (channelSpacingMm) => ({ ...link, channelSpacingMm }),
        },
        ...(link.studSpacingMm === undefined
          ? []
          : [
              {
                name: 'stud-spacing',
                label: 'Studs behind, if unknown',
                value: link.studSpacingMm,
                set: (studSpacingMm: Millimetres) => ({ ...link, studSpacingMm }),
              },
            ]),
      ]
    case 'sound-clip':
    case 'low-profile-clip':
      return [
        {
          name: 'row-spacing',
          label: 'Rows apart',
          value: link.rowSpacingMm,
          set: (rowSpacingMm) => ({ ...link, rowSpacingMm }),
        },
        {
          name: 'clip-spacing',
          label: 'Clips apart in a row',
          value: link.clipSpacingMm,
          set: (clipSpacingMm) => ({ ...link, clipSpacingMm }),
        },
      ]
    case 'spring-hanger':
      return [
        {
          name: 'row-spacing',
          label: 'Rows apart',
          value: link.rowSpacingMm,
          set: (rowSpacingMm) => ({ ...link, rowSpacingMm }),
        },
        {
          name: 'hanger-spacing',
          label: 'Hangers apart in a row',
          value: link.hangerSpacingMm,
          set: (hangerSpacingMm) => ({ ...link, hangerSpacingMm }),
        },
      ]
    default:
      return unreachable(link)
  }
}

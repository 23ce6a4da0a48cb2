import type { CavityLayer } from '#assemblies/layer.ts'
import { withDepth, withLink } from '#assemblies/usualLayer.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { FILL_AGAINST, LINK_OPTIONS } from '#ui/panels/bench/editor/editorWords.ts'
import { FrameFields } from '#ui/panels/bench/editor/FrameFields.tsx'
import { SpacingFields } from '#ui/panels/bench/editor/SpacingFields.tsx'
import { useBuilding } from '#ui/panels/bench/editor/useBuilding.ts'
import { useShownProject } from '#ui/session.ts'

export interface CavityProps {
  readonly layerKey: string
  readonly cavity: CavityLayer
}

/** A cavity: how deep, what fills it, what ties its two sides and what stands in it. */
export function CavityFields({ layerKey, cavity }: CavityProps) {
  const { setLayer, kept } = useBuilding()
  const { units } = useShownProject()
  return (
    <>
      <LengthField
        name="cavity-depth"
        label="Depth"
        value={cavity.depthMm}
        unit={units}
        kept={kept(`${layerKey} depth`)}
        onCommit={(depthMm) => {
          setLayer(layerKey, withDepth(cavity, depthMm))
          return null
        }}
      />
      <ChoiceField
        name="cavity-link"
        label="What ties its sides"
        value={cavity.link.kind}
        options={LINK_OPTIONS}
        onChoose={(kind) => setLayer(layerKey, withLink(cavity, kind, units))}
      />
      <SpacingFields layerKey={layerKey} cavity={cavity} />
      <FrameFields layerKey={layerKey} cavity={cavity} />
      <FillFields layerKey={layerKey} cavity={cavity} />
    </>
  )
}

function FillFields({ layerKey, cavity }: CavityProps) {
  const { setLayer, kept } = useBuilding()
  const { units } = useShownProject()
  const { fill, fillMm, fillAgainst, ...empty } = cavity
  const isPart = fill !== undefined && fillMm !== undefined
  return (
    <>
      <ChoiceField<'empty' | 'whole' | 'part'>
        name="cavity-fill"
        label="Mineral wool in it"
        value={fill === undefined ? 'empty' : isPart ? 'part' : 'whole'}
        options={[
          { value: 'empty', text: 'None' },
          { value: 'whole', text: 'As deep as the cavity' },
          { value: 'part', text: 'Part of its depth' },
        ]}
        onChoose={(wool) => setLayer(layerKey, wool === 'empty' ? empty : withWool(cavity, wool === 'part'))}
      />
      {isPart && (
        <>
          <LengthField
            name="cavity-fill-depth"
            label="Depth of the wool"
            value={fillMm}
            unit={units}
            kept={kept(`${layerKey} fill`)}
            onCommit={(depth) => {
              setLayer(layerKey, { ...cavity, fillMm: depth })
              return null
            }}
          />
          <ChoiceField
            name="cavity-fill-against"
            label="Where the wool lies"
            value={fillAgainst ?? 'usual'}
            options={FILL_AGAINST}
            onChoose={(side) => {
              const { fillAgainst: _, ...rest } = cavity
              setLayer(layerKey, side === 'usual' ? rest : { ...rest, fillAgainst: side })
            }}
          />
        </>
      )}
    </>
  )
}

/** Wool over the whole depth, or over the part that the studs in it leave. */
function withWool(cavity: CavityLayer, isPart: boolean): CavityLayer {
  const { fillMm, fillAgainst: _, ...rest } = cavity
  if (!isPart) return { ...rest, fill: 'mineral-wool' }
  const usualDepth = Math.min(cavity.depthMm, cavity.frame?.depthMm ?? cavity.depthMm / 2)
  return { ...rest, fill: 'mineral-wool', fillMm: fillMm ?? usualDepth }
}

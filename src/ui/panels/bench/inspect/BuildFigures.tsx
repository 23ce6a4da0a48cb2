import type { ReactNode } from 'react'
import { type Layer, layersDepth } from '#assemblies/layer.ts'
import { layersMass } from '#assemblies/predict.ts'
import { otherUnit } from '#ui/panels/words.ts'
import { useShownProject } from '#ui/session.ts'
import { formatSurfaceMass, formatThickness } from '#units/format.ts'

/** Depth and weight of a list of layers in both systems of units, and whatever else is to stand beside them. */
export function BuildFigures({
  layers,
  children,
}: {
  readonly layers: readonly Layer[]
  readonly children?: ReactNode
}) {
  const { units } = useShownProject()
  const depth = layersDepth(layers)
  const mass = layersMass(layers)
  return (
    <dl className="build-figures">
      <div>
        <dt>Depth</dt>
        <dd>
          {formatThickness(depth, units)} <small>{formatThickness(depth, otherUnit(units))}</small>
        </dd>
      </div>
      <div>
        <dt>Weight</dt>
        <dd>
          {formatSurfaceMass(mass, units)} <small>{formatSurfaceMass(mass, otherUnit(units))}</small>
        </dd>
      </div>
      {children}
    </dl>
  )
}

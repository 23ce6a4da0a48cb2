import type { Source } from '#assemblies/assembly.ts'
import type { Layer } from '#assemblies/layer.ts'
import { layerDepth } from '#assemblies/layer.ts'
import { layerMass } from '#assemblies/mass.ts'
import { layerWords, spacingWords } from '#ui/panels/bench/editor/editorWords.ts'
import { capital } from '#ui/panels/words.ts'
import { useShownProject } from '#ui/session.ts'
import { formatSurfaceMass, formatThickness } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface Props {
  readonly caption: string
  readonly layers: readonly Layer[]
  readonly sources: readonly Source[] | undefined
  /** Where the order of the layers comes from. */
  readonly whole: Source
}

/** A build-up layer by layer, each with its numbers and where they come from. */
export function LayerTable({ caption, layers, sources, whole }: Props) {
  const { units } = useShownProject()
  return (
    <div className="table-place">
      <table className="figures cards inside-layers">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Layer</th>
            <th scope="col">Thickness</th>
            <th scope="col">Weight</th>
            <th scope="col">Status</th>
            <th scope="col">Source</th>
          </tr>
        </thead>
        <tbody>
          {layers.map((layer, index) => {
            const source = sources?.[index] ?? whole
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: layers have no name but their place
              <tr key={index}>
                <th scope="row">
                  {index + 1} · {capital(layerWords(layer))}
                  <Details layer={layer} units={units} />
                </th>
                <td className="number" data-label="Thickness">
                  {formatThickness(layerDepth(layer), units)}
                </td>
                <td className="number" data-label="Weight">
                  {formatSurfaceMass(layerMass(layer), units)}
                </td>
                <td data-label="Status">{source.status}</td>
                <td className="words" data-label="Source">
                  {source.text}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}

/** What only a cavity has: wool, spacings and the studs in it. */
function Details({ layer, units }: { readonly layer: Layer; readonly units: LengthUnit }) {
  if (layer.kind !== 'cavity') return null
  const length = (mm: number) => formatThickness(mm, units)
  const { fill, fillMm, link, frame } = layer
  const words = [
    ...(fill === undefined
      ? []
      : [fillMm === undefined ? 'filled with mineral wool' : `mineral wool ${length(fillMm)}`]),
    ...spacingWords(link).map(([name, mm]) => `${name} ${length(mm)} apart`),
    ...(link.kind === 'none' && frame?.members ? [`studs ${length(frame.members.spacingMm)} apart`] : []),
  ]
  return words.length === 0 ? null : <span className="under">{capital(words.join(', '))}</span>
}

import { materialLines } from '#ui/panels/bench/inspect/materialRows.ts'
import { useShownProject } from '#ui/session.ts'

/** What the calculation knows of every material, and where it knows it from. */
export function MaterialsTable() {
  const { units } = useShownProject()
  return (
    <div className="table-place">
      <table className="figures cards materials">
        <caption>
          Memory: recalled, not looked up. Seen: read in the source named. Derived: our own estimate. The dip of a board
          lies at its critical frequency: the last number divided by the thickness in metres.
        </caption>
        <thead>
          <tr>
            <th scope="col">Material</th>
            <th scope="col">Density, kg/m³</th>
            <th scope="col">Young's modulus, GPa</th>
            <th scope="col">Poisson's ratio</th>
            <th scope="col">Internal loss factor</th>
            <th scope="col">Critical frequency × thickness, m/s</th>
            <th scope="col">Status</th>
            <th scope="col">Source</th>
          </tr>
        </thead>
        <tbody>
          {materialLines(units).map((line) => (
            <tr key={line.key}>
              <th scope="row">{line.name}</th>
              <td className="number" data-label="Density, kg/m³">
                {line.density}
              </td>
              <td className="number" data-label="Young's modulus, GPa">
                {line.young}
              </td>
              <td className="number" data-label="Poisson's ratio">
                {line.poisson}
              </td>
              <td className="number" data-label="Internal loss factor">
                {line.loss}
              </td>
              <td className="number" data-label="Critical freq. × thickness, m/s">
                {line.criticalTimesThickness}
              </td>
              <td data-label="Status">{line.status}</td>
              <td className="words" data-label="Source">
                {line.source}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

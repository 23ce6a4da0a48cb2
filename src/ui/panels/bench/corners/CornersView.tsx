import type { CornerAsBuilt } from '#analysis/results.ts'
import { surfaceLabel } from '#state/commands/edit.ts'
import { runThrough } from '#state/commands/schemes.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { useRecordedScheme, useRun } from '#ui/panels/bench/useBench.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useRoom, useSession, useShownProject, useView } from '#ui/session.ts'
import { cornerLabel } from '#ui/words.ts'
import { formatLength } from '#units/format.ts'

/** Where two linings meet: which one runs through, the gap that is sealed, and what would touch. */
export function CornersView() {
  const scheme = useRecordedScheme()
  const { result } = useLedger()
  return (
    <div className="table-place">
      <table className="figures cards wide-table">
        <caption>Corners as they would be built in {scheme.name}; the space account keeps the mitre</caption>
        <thead>
          <tr>
            {['Corner', 'Between', 'Runs through', 'Gap, sealed', 'As built'].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {result?.corners.map((corner) => (
            <CornerRow key={corner.cornerId} corner={corner} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function CornerRow({ corner }: { readonly corner: CornerAsBuilt }) {
  const room = useRoom()
  const { units } = useShownProject()
  const { view } = useSession()
  const isPicked = useView((state) => state.cornerId === corner.cornerId)
  const label = cornerLabel(room, corner.cornerId)
  return (
    <tr aria-current={isPicked ? 'true' : undefined}>
      <th scope="row">
        <button
          type="button"
          className="row-button"
          onClick={() => view.setState({ cornerId: corner.cornerId, thing: null })}
        >
          {label}
        </button>
      </th>
      <td className="number" data-label="Between">
        {corner.walls.map((id) => surfaceLabel(room, id)).join(' and ')}
      </td>
      <td data-label="Runs through">
        <RunsThrough corner={corner} label={label} />
      </td>
      <td className="number" data-label="Gap, sealed">
        {corner.gapMm === null ? 'none' : formatLength(corner.gapMm, units)}
      </td>
      <td className="sentence" data-label="As built">
        {corner.touchesUntreated && <span className="warn-sign" aria-hidden="true" />}
        {corner.text}
      </td>
    </tr>
  )
}

function RunsThrough({ corner, label }: { readonly corner: CornerAsBuilt; readonly label: string }) {
  const room = useRoom()
  const scheme = useRecordedScheme()
  const run = useRun()
  if (corner.runsThrough === null) return 'neither'
  const usual = corner.isChosen ? 'as is usual' : `as is usual: ${surfaceLabel(room, corner.runsThrough)}`
  return (
    <ChoiceField
      name={`runs-through-${corner.cornerId}`}
      label={`Lining that runs through at ${label}`}
      quiet
      value={corner.isChosen ? corner.runsThrough : 'usual'}
      options={[
        { value: 'usual', text: usual },
        ...corner.walls.map((id) => ({ value: id, text: surfaceLabel(room, id) })),
      ]}
      onChoose={(wall) => run(runThrough(scheme.id, corner.cornerId, wall === 'usual' ? null : wall))}
    />
  )
}

import type { Underlay } from '#project/project.ts'
import { deleteThing } from '#state/commands/things.ts'
import { changeUnderlay } from '#state/commands/underlays.ts'
import { beginCalibrating } from '#ui/canvas/useCalibrate.ts'
import { useRoom, useSession, useView } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'
import { PickPicture } from '#ui/trace/PickPicture.tsx'
import { UnderlayFields } from '#ui/trace/UnderlayFields.tsx'
import { useHasPicture } from '#ui/trace/usePictureImage.ts'

/** One picture: its verbs, and where it lies once it is selected. */
export function UnderlayRow({ underlay }: { readonly underlay: Underlay }) {
  const { document, view } = useSession()
  const isSelected = useView(({ thing }) => thing?.kind === 'underlay' && thing.id === underlay.id)
  const isMissing = useHasPicture(underlay.sha256) === false
  const { id, name, isShown, isLocked } = underlay
  const select = () =>
    view.setState({ thing: isSelected ? null : { kind: 'underlay', id }, surfaceIds: [], cornerId: null })
  const isToScale = underlay.isCalibrated === true
  return (
    <li className="trace-row">
      <div className="verbs">
        <button type="button" className="verb trace-name" title={name} aria-pressed={isSelected} onClick={select}>
          {name}
        </button>
        <CalibrateVerb underlay={underlay} />
        <button
          type="button"
          className="verb"
          aria-label={`${isShown ? 'Hide' : 'Show'} ${name}`}
          onClick={() => document.run(changeUnderlay(id, { isShown: !isShown }))}
        >
          {isShown ? 'Hide' : 'Show'}
        </button>
        <button
          type="button"
          className="verb"
          aria-label={`${isLocked ? 'Unlock' : 'Lock'} ${name}`}
          onClick={() => document.run(changeUnderlay(id, { isLocked: !isLocked }))}
        >
          {isLocked ? 'Unlock' : 'Lock'}
        </button>
        <RemoveVerb underlay={underlay} />
        <span className="quiet" data-warns={!isToScale}>
          {isToScale ? `to scale, ${pixelText(underlay.mmPerPx)}` : 'not to scale yet'}
        </span>
      </div>
      {isMissing && (
        <p className="field-error">
          <span className="warn-sign" aria-hidden="true" />
          The picture is not on this machine: it came in no file.{' '}
          <PickPicture label="Load it again" replaces={id} className="verb" />
        </p>
      )}
      {isSelected && <UnderlayFields underlay={underlay} />}
    </li>
  )
}

function CalibrateVerb({ underlay }: { readonly underlay: Underlay }) {
  const session = useSession()
  const shell = useShell()
  const stops = underlay.isLocked || !underlay.isShown
  return (
    <button
      type="button"
      className="verb"
      aria-label={`Calibrate ${underlay.name}`}
      title={stops ? 'Show and unlock it first' : 'Two points and the distance between them set its scale'}
      disabled={stops}
      onClick={() => beginCalibrating(session, shell, underlay.id)}
    >
      Calibrate
    </button>
  )
}

function RemoveVerb({ underlay }: { readonly underlay: Underlay }) {
  const { document } = useSession()
  const room = useRoom()
  return (
    <button
      type="button"
      className="verb"
      aria-label={`Remove ${underlay.name}`}
      onClick={() => document.run(deleteThing(room.id, { kind: 'underlay', id: underlay.id }))}
    >
      Remove
    </button>
  )
}

/** How much one pixel of the picture stands for: what a missed press costs. */
function pixelText(mmPerPx: number): string {
  return `1 pixel ${mmPerPx >= 10 ? Math.round(mmPerPx) : Math.round(mmPerPx * 10) / 10} mm`
}

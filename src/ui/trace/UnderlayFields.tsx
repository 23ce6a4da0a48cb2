import { useId, useState } from 'react'
import type { Underlay } from '#project/project.ts'
import { changeUnderlay } from '#state/commands/underlays.ts'
import { AngleField } from '#ui/fields/AngleField.tsx'
import { FieldFrame } from '#ui/fields/FieldFrame.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { useDocument, useSession } from '#ui/session.ts'

/** Where a picture lies, how it is turned and how faint it is. */
export function UnderlayFields({ underlay }: { readonly underlay: Underlay }) {
  return (
    <div className="trace-fields">
      <FadeField underlay={underlay} />
      {underlay.isLocked ? (
        <p className="quiet">Locked: it does not move, turn or take another scale.</p>
      ) : (
        <PlaceFields underlay={underlay} />
      )}
    </div>
  )
}

function PlaceFields({ underlay }: { readonly underlay: Underlay }) {
  const { document } = useSession()
  const unit = useDocument((state) => state.project.units)
  const change = (patch: Partial<Underlay>) => {
    const outcome = document.run(changeUnderlay(underlay.id, patch))
    return outcome.ok ? null : outcome.error.message
  }
  return (
    <>
      <AngleField
        name="trace-angle"
        label="Turned to the left"
        compact
        value={underlay.angleDeg}
        onCommit={(angleDeg) => change({ angleDeg })}
      />
      <LengthField
        name="trace-x"
        label="Middle, right"
        compact
        value={underlay.xMm}
        unit={unit}
        onCommit={(xMm) => change({ xMm })}
      />
      <LengthField
        name="trace-y"
        label="Middle, up"
        compact
        value={underlay.yMm}
        unit={unit}
        onCommit={(yMm) => change({ yMm })}
      />
    </>
  )
}

/** Shown while the hand slides, one undo step when it lets go. */
function FadeField({ underlay }: { readonly underlay: Underlay }) {
  const { document } = useSession()
  const id = useId()
  const [held, setHeld] = useState<number | null>(null)
  const fade = held ?? Math.round((1 - underlay.opacity) * 100)
  const faded = (percent: number) => changeUnderlay(underlay.id, { opacity: (100 - percent) / 100 })
  const letGo = () => {
    if (held !== null) document.run(faded(held))
    setHeld(null)
  }
  return (
    <FieldFrame id={id} name="trace-fade" label="Fade" hint={null} error={null}>
      <span className="trace-fade">
        <input
          id={id}
          name="trace-fade"
          type="range"
          min={0}
          max={95}
          step={5}
          value={fade}
          aria-valuetext={`${fade} %`}
          onChange={(event) => {
            const percent = Number(event.target.value)
            setHeld(percent)
            document.show(faded(percent))
          }}
          onPointerUp={letGo}
          onKeyUp={letGo}
          onBlur={letGo}
        />
        {fade} %
      </span>
    </FieldFrame>
  )
}

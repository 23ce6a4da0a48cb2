import type { Opening } from '#analysis/room.ts'
import type { OpeningMade } from '#assemblies/opening.ts'
import type { OpeningSound } from '#assemblies/openingSound.ts'
import { makeOpening, makeOpeningIn } from '#state/commands/openingsMade.ts'
import { SealField, TypeField } from '#ui/panels/bench/openings/made/MadeFields.tsx'
import { octaveRows, openingStcWords } from '#ui/panels/bench/openings/made/madeWords.ts'
import type { ShownSound } from '#ui/panels/bench/openings/made/useOpeningSound.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useRoom, useScheme } from '#ui/session.ts'
import { fixed } from '#units/format.ts'

interface Props {
  readonly opening: Opening
  readonly shown: ShownSound | null
}

/** Under an opening's row: what it is, what the shown scheme puts in it, and what comes through. */
export function SoundInRow({ opening, shown }: Props) {
  const room = useRoom()
  const scheme = useScheme()
  const run = useRun()
  const { id, name } = opening
  const standing = {
    opening,
    made: opening.made ?? null,
    name: `${id}-row-made`,
    onMake: (made: OpeningMade | null) => run(makeOpening(room.id, id, made)),
  }
  const chosen = {
    opening,
    made: scheme.openings?.[id] ?? null,
    name: `${id}-row-made-in`,
    onMake: (made: OpeningMade | null) => run(makeOpeningIn(scheme.id, id, made)),
  }
  return (
    <>
      <div className="row-fields row-made">
        <TypeField {...standing} label="As it stands" of={name} nothing="Not known yet" />
        <SealField {...standing} of={name} />
      </div>
      <div className="row-fields row-made">
        <TypeField {...chosen} label="In this scheme" of={name} nothing="Nothing new" />
        <SealField {...chosen} of={`${name} in this scheme`} />
      </div>
      {shown?.sound.ok && <Figures sound={shown.sound.value} opening={opening} />}
    </>
  )
}

/** STC 27, likely 21-33 · 63 Hz 16 dB (assumed) · 125 Hz 22 dB ...; where nothing is more than assumed, once for all. */
function Figures({ sound, opening }: { readonly sound: OpeningSound; readonly opening: Opening }) {
  const rows = octaveRows(sound, opening)
  const isAllAssumed = rows.every(({ isAssumed }) => isAssumed)
  return (
    <p className="row-tells">
      <span>{openingStcWords(sound)}</span>
      {rows.map(({ hz, lossDb, isAssumed }) => (
        <span key={hz}>
          {hz} Hz {fixed(lossDb, 0)} dB{isAssumed && !isAllAssumed ? ' (assumed)' : ''}
        </span>
      ))}
      {isAllAssumed && <span>all octaves assumed</span>}
    </p>
  )
}

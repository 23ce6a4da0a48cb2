import type { FrameMembers } from '#assemblies/layer.ts'
import { type MemberMaterial, withMembers, withOwnRow } from '#assemblies/usualLayer.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { MassField } from '#ui/fields/MassField.tsx'
import type { CavityProps } from '#ui/panels/bench/editor/CavityFields.tsx'
import { ROW_OPTIONS } from '#ui/panels/bench/editor/editorWords.ts'
import { useBuilding } from '#ui/panels/bench/editor/useBuilding.ts'
import { capital } from '#ui/panels/words.ts'
import { useShownProject } from '#ui/session.ts'

/** Studs or hardware that stand in a cavity, and what they weigh. */
export function FrameFields({ layerKey, cavity }: CavityProps) {
  const { setLayer, kept } = useBuilding()
  const { units } = useShownProject()
  const { frame, link } = cavity
  const members = frame?.members
  return (
    <>
      {link.kind === 'none' && (
        <ChoiceField<MemberMaterial | 'nothing'>
          name="cavity-row"
          label="What stands in it"
          value={members?.material ?? 'nothing'}
          options={ROW_OPTIONS}
          onChoose={(row) => setLayer(layerKey, withOwnRow(cavity, row === 'nothing' ? null : row, units))}
        />
      )}
      {members && (link.kind === 'none' || link.kind === 'staggered-stud') && (
        <StudFields
          layerKey={layerKey}
          members={members}
          withSpacing={link.kind === 'none'}
          onChange={(changed) => setLayer(layerKey, withMembers(cavity, changed))}
        />
      )}
      {frame && (
        <MassField
          name="frame-mass"
          label={members ? 'Weight of the studs' : 'Weight of its hardware'}
          value={frame.massKgM2}
          unit={units}
          kept={kept(`${layerKey} frame mass`)}
          onCommit={(mass) => {
            if (mass === null || mass < 0) return `${capital(frame.name)} cannot weigh less than 0.`
            setLayer(layerKey, { ...cavity, frame: { ...frame, massKgM2: mass } })
            return null
          }}
        />
      )}
    </>
  )
}

interface StudProps {
  readonly layerKey: string
  readonly members: FrameMembers
  readonly withSpacing: boolean
  readonly onChange: (members: FrameMembers) => void
}

function StudFields({ layerKey, members, withSpacing, onChange }: StudProps) {
  const { kept } = useBuilding()
  const { units } = useShownProject()
  const set = (part: Partial<FrameMembers>) => {
    onChange({ ...members, ...part })
    return null
  }
  return (
    <>
      <LengthField
        name="stud-depth"
        label="Stud depth"
        value={members.depthMm}
        unit={units}
        leastMm={0}
        moreThanLeast
        kept={kept(`${layerKey} stud depth`)}
        onCommit={(depthMm) => set({ depthMm })}
      />
      {withSpacing && (
        <LengthField
          name="own-stud-spacing"
          label="Stud spacing"
          value={members.spacingMm}
          unit={units}
          leastMm={0}
          moreThanLeast
          kept={kept(`${layerKey} own stud spacing`)}
          onCommit={(spacingMm) => set({ spacingMm })}
        />
      )}
    </>
  )
}

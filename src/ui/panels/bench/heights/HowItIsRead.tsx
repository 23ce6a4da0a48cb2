import { roomLevels } from '#analysis/heights/levels.ts'
import type { CeilingShape } from '#analysis/room.ts'
import { choiceFor } from '#analysis/scheme.ts'
import { setCeilingShape } from '#state/commands/heights.ts'
import { setRoomHeight } from '#state/commands/outline.ts'
import { layFloorLevel } from '#state/commands/schemes.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { slopeWords } from '#ui/panels/bench/heights/slopeWords.ts'
import { useRecordedScheme, useRun } from '#ui/panels/bench/useBench.ts'
import { useCatalogue, useRoom, useShownProject } from '#ui/session.ts'
import { formatThickness } from '#units/format.ts'

/** How the measured heights are read, and how the new floor is laid. */
export function HowItIsRead() {
  const room = useRoom()
  const { units } = useShownProject()
  const run = useRun()
  return (
    <>
      <div className="field-row">
        {room.heights.length === 1 && (
          <LengthField
            name="room-height"
            label="Height of the room, floor to what the tape touched"
            value={room.heights[0]?.heightMm ?? 0}
            unit={units}
            leastMm={0}
            moreThanLeast
            onCommit={(value) => run(setRoomHeight(room.id, value))}
          />
        )}
        <ChoiceField<CeilingShape>
          name="ceiling-shape"
          label="The ceiling is read"
          value={room.ceilingShape}
          options={[
            { value: 'as-measured', text: 'as measured: a plane through its heights' },
            { value: 'level', text: 'level, at its lowest height' },
          ]}
          onChoose={(shape) => run(setCeilingShape(room.id, shape))}
        />
        <FloorLaid />
      </div>
      <p className="table-note">{planeSentences(room, units)}</p>
    </>
  )
}

function planeSentences(room: Parameters<typeof roomLevels>[0], units: 'mm' | 'ft-in'): string {
  const levels = roomLevels(room)
  const miss =
    levels.worstMissMm > 0
      ? ` The worst of the measured levels lies ${formatThickness(levels.worstMissMm, units)} off its plane.`
      : ' Every measured level lies on its plane.'
  const parts = levels.parts.map(({ name, ceiling }) => ` ${name}: ${slopeWords(ceiling, units)}.`).join('')
  return `Ceiling: ${slopeWords(levels.ceiling, units)}.${parts} Floor: ${slopeWords(levels.floor, units)}.${miss}`
}

/** A new floor follows the fall of the old one or is laid level; asked only where one is built. */
function FloorLaid() {
  const room = useRoom()
  const scheme = useRecordedScheme()
  const catalogue = useCatalogue()
  const run = useRun()
  const choice = choiceFor(scheme, room.floor.id)
  const name = catalogue.assemblies.get(choice.assembly)?.name
  if (name === undefined) return null
  return (
    <ChoiceField
      name="floor-laid"
      label={`New floor in ${scheme.name}`}
      value={choice.laidLevel === true ? 'level' : 'fall'}
      options={[
        { value: 'fall', text: 'follows the fall of the old one' },
        { value: 'level', text: 'laid level, from the highest place of the old one' },
      ]}
      hint={name}
      onChoose={(laid) => run(layFloorLevel(scheme.id, room.floor.id, laid === 'level'))}
    />
  )
}

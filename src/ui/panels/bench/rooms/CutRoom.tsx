import { useState } from 'react'
import { type Box, boundingBox } from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Placement } from '#project/project.ts'
import { cutRoom } from '#state/commands/partitions.ts'
import { USUAL_PARTITION } from '#state/usualThings.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { PLACEMENTS, partitionConstructions } from '#ui/panels/bench/rooms/partitionWords.ts'
import { Problems, TableVerbs } from '#ui/panels/bench/tables/rows.tsx'
import { CUT_CAUTION } from '#ui/panels/bench/thing/thingCautions.ts'
import { useCatalogue, useRoom, useSession, useShownProject } from '#ui/session.ts'

type Way = 'up' | 'across'

/** Cuts the room on the page in two along a typed line, or with the hand on the plan. */
export function CutRoom() {
  const [isOpen, setOpen] = useState(false)
  return (
    <>
      <TableVerbs label="Cut the room">
        <button type="button" className="row-button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          Cut this room in two
        </button>
      </TableVerbs>
      {isOpen && <CutForm onCut={() => setOpen(false)} />}
    </>
  )
}

function CutForm({ onCut }: { readonly onCut: () => void }) {
  const { document, view } = useSession()
  const room = useRoom()
  const { units, partitions } = useShownProject()
  const catalogue = useCatalogue()
  const box = boundingBox(room.corners.map(({ xMm, yMm }): Point => [xMm, yMm]))
  const [way, setWay] = useState<Way>('up')
  const [typed, setTyped] = useState<number | null>(null)
  const [construction, setConstruction] = useState(USUAL_PARTITION)
  const [placement, setPlacement] = useState<Placement>('middle')
  if (box === null) return null
  const at = typed ?? (way === 'up' ? (box.minX + box.maxX) / 2 : (box.minY + box.maxY) / 2)
  const cut = () => {
    const name = `Partition ${partitions.length + 1}`
    if (document.run(cutRoom(room.id, ...lineAt(box, way, at), { construction, placement, name })).ok) onCut()
  }
  return (
    <div className="cut-form">
      <div className="field-row">
        <ChoiceField<Way>
          name="cut-way"
          label="Its line runs"
          value={way}
          options={[
            { value: 'up', text: 'up the page' },
            { value: 'across', text: 'across the page' },
          ]}
          onChoose={(chosen) => {
            setWay(chosen)
            setTyped(null)
          }}
        />
        <LengthField
          key={way}
          name="cut-at"
          label={way === 'up' ? 'at x' : 'at y'}
          value={at}
          unit={units}
          onCommit={(value) => {
            setTyped(value)
            return null
          }}
        />
        <ChoiceField
          name="cut-construction"
          label="Built of"
          value={construction}
          options={partitionConstructions(catalogue)}
          onChoose={setConstruction}
        />
        <ChoiceField<Placement>
          name="cut-placement"
          label="Its thickness lies"
          value={placement}
          options={PLACEMENTS}
          onChoose={setPlacement}
        />
        <button type="button" className="row-button" onClick={cut}>
          Cut along this line
        </button>
        <button
          type="button"
          className="row-button"
          onClick={() => view.setState({ tool: 'cut', surfaceIds: [], cornerId: null, thing: null })}
        >
          Draw the line on the plan
        </button>
      </div>
      <Problems texts={[CUT_CAUTION]} />
    </div>
  )
}

/** The line across the whole room at a place. */
function lineAt({ minX, minY, maxX, maxY }: Box, way: Way, at: number): readonly [Point, Point] {
  if (way === 'up') {
    return [
      [at, minY],
      [at, maxY],
    ]
  }
  return [
    [minX, at],
    [maxX, at],
  ]
}

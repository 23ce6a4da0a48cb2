import type { CeilingPart, Drop, Obstacle } from '#analysis/room.ts'
import { changeDrop } from '#state/commands/drops.ts'
import { changeCeilingPart } from '#state/commands/heights.ts'
import { changeObstacle } from '#state/commands/obstacles.ts'
import { HeightTable } from '#ui/panels/bench/heights/HeightTable.tsx'
import { TakenOut } from '#ui/panels/bench/standing/TakenOut.tsx'
import { ceilingPartEntries, dropEntries, obstacleEntries } from '#ui/panels/bench/tables/entries.ts'
import { EntryFields, Facts, NameField, ShapeCorners, ThingForm } from '#ui/panels/bench/thing/parts.tsx'
import { BOX_CAUTION, TAKE_OUT_CAUTION } from '#ui/panels/bench/thing/thingCautions.ts'
import { bothHeights } from '#ui/panels/ledger/heightRows.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useRoom, useShownProject } from '#ui/session.ts'

/** A column, pier or breast. */
export function ObstacleForm({ obstacle }: { readonly obstacle: Obstacle }) {
  const room = useRoom()
  const { id, name, corners } = obstacle
  const { place, own } = obstacleEntries(room, obstacle)
  const beside = (
    <>
      <TakenOut obstacle={obstacle} />
      <Facts title="" rows={[]} problems={[TAKE_OUT_CAUTION]} />
      <ShapeCorners thing={{ kind: 'obstacle', id }} corners={corners} />
    </>
  )
  return (
    <ThingForm name={name} beside={beside}>
      <NameField id={id} value={name} command={(text) => changeObstacle(room.id, id, { name: text })} />
      <EntryFields id={id} entries={[...(place ?? []), ...own]} />
    </ThingForm>
  )
}

/** A beam or duct soffit. */
export function DropForm({ drop }: { readonly drop: Drop }) {
  const room = useRoom()
  const { units } = useShownProject()
  const { result } = useLedger()
  const { id, name, corners } = drop
  const { place, own } = dropEntries(room, drop)
  const clear = result?.ledger.drops.find((entry) => entry.id === id)?.clearHeightMm
  const beside = (
    <>
      <Facts
        title="What is left under it"
        rows={clear === undefined ? [] : [['Clear height', bothHeights(clear, units)]]}
        problems={[BOX_CAUTION]}
      />
      <ShapeCorners thing={{ kind: 'drop', id }} corners={corners} />
    </>
  )
  return (
    <ThingForm name={name} beside={beside}>
      <NameField id={id} value={name} command={(text) => changeDrop(room.id, id, { name: text })} />
      <EntryFields id={id} entries={[...(place ?? []), ...own]} />
    </ThingForm>
  )
}

/** A part of the ceiling with heights of its own. */
export function CeilingPartForm({ part }: { readonly part: CeilingPart }) {
  const room = useRoom()
  const { id, name, corners } = part
  const beside = (
    <>
      <HeightTable part={part} heights={part.heights} />
      <ShapeCorners thing={{ kind: 'ceiling-part', id }} corners={corners} />
    </>
  )
  return (
    <ThingForm name={name} beside={beside}>
      <NameField id={id} value={name} command={(text) => changeCeilingPart(room.id, id, { name: text })} />
      <EntryFields id={id} entries={ceilingPartEntries(room, part).place ?? []} />
    </ThingForm>
  )
}

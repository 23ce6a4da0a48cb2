import type { Room } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'
import type { RoomView, Thing, ThingKind } from '#state/view.ts'
import { boxesOf, type PlanRoom } from '#ui/canvas/planRoom.ts'
import { usePlanRoom } from '#ui/canvas/usePlanRoom.ts'
import { BoxForm } from '#ui/panels/bench/air/BoxForm.tsx'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { FurnitureForm } from '#ui/panels/bench/thing/FurnitureForm.tsx'
import { HeightForm } from '#ui/panels/bench/thing/HeightForm.tsx'
import { OpeningForm } from '#ui/panels/bench/thing/OpeningForm.tsx'
import { PartitionForm } from '#ui/panels/bench/thing/PartitionForm.tsx'
import { CeilingPartForm, DropForm, ObstacleForm } from '#ui/panels/bench/thing/shapeForms.tsx'
import { UnderlayForm } from '#ui/panels/bench/thing/UnderlayForm.tsx'
import { useSession, useShownProject } from '#ui/session.ts'
import { unreachable } from '#units/result.ts'

/** One thing of the plan: its name, all its numbers, and what the linings leave of it. */
export function ThingBench({ thing }: { readonly thing: Thing }) {
  const project = useShownProject()
  const room = usePlanRoom()
  const { view } = useSession()
  const verbs = useThingVerbs()
  const table = TABLES[thing.kind]
  return (
    <>
      <header className="bench-head">
        <h2>{thingName(project, room, thing)}</h2>
        <fieldset className="select-buttons">
          <legend className="visually-hidden">This thing</legend>
          {table && (
            <button
              type="button"
              onClick={() => {
                view.setState({ roomView: table.view })
                verbs.pick(thing)
              }}
            >
              {table.text}
            </button>
          )}
          <button type="button" onClick={() => verbs.remove(thing)}>
            {thing.kind === 'partition' ? 'Join the rooms again' : 'Delete'}
          </button>
          <button type="button" onClick={() => view.setState({ thing: null })}>
            Whole room
          </button>
        </fieldset>
      </header>
      <Form project={project} room={room} thing={thing} />
    </>
  )
}

/** The table a thing stands in with its like. */
const TABLES: Readonly<Record<ThingKind, { readonly view: RoomView; readonly text: string } | null>> = {
  opening: { view: 'openings', text: 'All openings' },
  obstacle: { view: 'standing', text: 'All that stands and hangs' },
  drop: { view: 'standing', text: 'All that stands and hangs' },
  height: { view: 'heights', text: 'All heights' },
  'ceiling-part': { view: 'heights', text: 'All heights' },
  furniture: { view: 'furniture', text: 'All furniture' },
  box: { view: 'air', text: 'Air and leaks' },
  partition: { view: 'rooms', text: 'All rooms' },
  underlay: null,
}

interface FormProps {
  readonly project: Project
  readonly room: PlanRoom
  readonly thing: Thing
}

function Form({ project, room, thing: { kind, id } }: FormProps) {
  const of = <Entry extends { readonly id: string }>(entries: readonly Entry[]) =>
    entries.find((entry) => entry.id === id)
  switch (kind) {
    case 'opening':
      return render(of(room.openings), (opening) => <OpeningForm opening={opening} />)
    case 'obstacle':
      return render(of(room.obstacles), (obstacle) => <ObstacleForm obstacle={obstacle} />)
    case 'drop':
      return render(of(room.drops), (drop) => <DropForm drop={drop} />)
    case 'height':
      return render(of(allHeights(room)), (point) => <HeightForm point={point} />)
    case 'ceiling-part':
      return render(of(room.ceilingParts), (part) => <CeilingPartForm part={part} />)
    case 'furniture':
      return render(of(room.furniture), (piece) => <FurnitureForm piece={piece} />)
    case 'box':
      return render(of(boxesOf(room)), (box) => <BoxForm box={box} />)
    case 'partition':
      return render(of(project.partitions), (partition) => <PartitionForm partition={partition} />)
    case 'underlay':
      return render(of(project.underlays), (underlay) => <UnderlayForm underlay={underlay} />)
    default:
      return unreachable(kind)
  }
}

function render<Entry>(entry: Entry | undefined, form: (entry: Entry) => React.ReactNode): React.ReactNode {
  return entry === undefined ? null : form(entry)
}

function allHeights({ heights, ceilingParts }: Room): Room['heights'] {
  return [...heights, ...ceilingParts.flatMap((part) => part.heights)]
}

/** A thing as it is called; a height has a number in place of a name. */
function thingName(project: Project, room: PlanRoom, { kind, id }: Thing): string {
  if (kind === 'height') return `Height ${allHeights(room).findIndex((point) => point.id === id) + 1}`
  const named = [
    ...room.openings,
    ...room.obstacles,
    ...room.drops,
    ...room.ceilingParts,
    ...room.furniture,
    ...boxesOf(room),
    ...project.partitions,
    ...project.underlays,
  ]
  return named.find((entry) => entry.id === id)?.name ?? ''
}

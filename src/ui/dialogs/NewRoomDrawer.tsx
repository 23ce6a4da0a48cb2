import { type FormEvent, useRef, useState } from 'react'
import { openDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import { Drawer } from '#ui/dialogs/Drawer.tsx'
import { EntryField } from '#ui/dialogs/EntryField.tsx'
import { bothReadings, lengthText, readLength } from '#ui/fields/readLength.ts'
import { openProject } from '#ui/files.ts'
import { OFFERED_HEIGHT_MM, projectWithoutOutline, rectangularProject, STAND_IN_MM } from '#ui/newProject.ts'
import { useDocument, useSession } from '#ui/session.ts'
import { useDraw, useShell } from '#ui/shell.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

type Side = 'width' | 'length' | 'height'
type Problems = Partial<Record<Side, string>>

const FIELDS: readonly { readonly side: Side; readonly label: string }[] = [
  { side: 'width', label: 'Width, across the page' },
  { side: 'length', label: 'Length, up the page' },
  { side: 'height', label: 'Clear height' },
]

const TRACE_NEXT =
  'A rectangle stands in for the room: load the picture, calibrate it, then press Draw room and go round the walls you see.'

/** A room of one's own: from width, length and height, drawn corner by corner, or traced from a picture. */
export function NewRoomDrawer() {
  const units = useDocument((state) => state.project.units)
  const form = useNewRoom(units)
  return (
    <Drawer name="new-room" title="New room">
      <form className="drawer-line" onSubmit={form.startRectangle} noValidate ref={form.formRef}>
        {FIELDS.map(({ side, label }) => (
          <EntryField
            key={side}
            label={label}
            name={`new-${side}`}
            text={form.texts[side]}
            hint={readingOf(form.texts[side], units)}
            error={form.problems[side] ?? null}
            onText={(text) => form.type(side, text)}
          />
        ))}
        <button type="submit" className="action">
          Start this room
        </button>
        <button type="button" className="verb" onClick={form.draw}>
          Draw it corner by corner
        </button>
        <button type="button" className="verb" onClick={form.trace}>
          Trace a picture
        </button>
      </form>
      <GoOnDrawing />
      <p className="quiet">
        One height is enough to begin with; where it differs, the other heights are added to the room as they are
        measured.
      </p>
      <p className="quiet">The open project gives way; Undo brings it back. Save keeps it as a file.</p>
    </Drawer>
  )
}

/** An outline that was left with corners standing: begun anew it would lose them. */
function GoOnDrawing() {
  const session = useSession()
  const shell = useShell()
  const count = useDraw((state) => state.points.length)
  if (count === 0) return null
  return (
    <p className="quiet">
      An outline of {count === 1 ? 'one corner' : `${count} corners`} was begun and left; drawing a new one takes its
      place.{' '}
      <button type="button" className="verb verb-in-text" onClick={() => openDrawing(session, shell)}>
        Go on with it
      </button>
    </p>
  )
}

function readingOf(text: string, units: LengthUnit): string {
  const read = readLength(text, units)
  if (read.ok) return bothReadings(read.value, units)
  return units === 'mm' ? 'as 3810, 3.81 m or 12\' 6"' : 'as 12\' 6", 12-6 or 3.81 m'
}

function useNewRoom(units: LengthUnit) {
  const session = useSession()
  const shell = useShell()
  const formRef = useRef<HTMLFormElement>(null)
  const [texts, setTexts] = useState<Readonly<Record<Side, string>>>({
    width: '',
    length: '',
    height: lengthText(OFFERED_HEIGHT_MM[units], units),
  })
  const [problems, setProblems] = useState<Problems>({})

  const complain = (found: Problems) => {
    setProblems(found)
    const first = FIELDS.find(({ side }) => found[side] !== undefined)
    if (first) formRef.current?.querySelector<HTMLInputElement>(`[name="new-${first.side}"]`)?.focus()
  }
  return {
    formRef,
    texts,
    problems,
    type: (side: Side, text: string) => {
      setTexts({ ...texts, [side]: text })
      setProblems({ ...problems, [side]: undefined })
    },
    startRectangle: (event: FormEvent) => {
      event.preventDefault()
      const { sizes, found } = readSizes(texts, ['width', 'length', 'height'], units)
      if (Object.keys(found).length > 0) return complain(found)
      const project = rectangularProject(units, sizes)
      if (project.ok) openProject(session, shell, project.value, 'start a new room')
      else complain({ width: project.error.message })
    },
    /** Width and length may stay empty: the picture says better. */
    trace: () => {
      const isBlank = texts.width.trim() === '' && texts.length.trim() === ''
      const { sizes, found } = readSizes(texts, isBlank ? ['height'] : ['width', 'length', 'height'], units)
      if (Object.keys(found).length > 0) return complain(found)
      const project = rectangularProject(units, isBlank ? { ...sizes, ...STAND_IN_MM[units] } : sizes)
      if (!project.ok) return complain({ height: project.error.message })
      openProject(session, shell, project.value, 'start a new room')
      shell.trace.store.setState({ isOpen: true })
      shell.state.setState({ notice: { kind: 'told', text: TRACE_NEXT, details: [] } })
    },
    draw: () => {
      const { sizes, found } = readSizes(texts, ['height'], units)
      if (Object.keys(found).length > 0) return complain(found)
      const project = projectWithoutOutline(units, sizes.height)
      if (!project.ok) return complain({ height: project.error.message })
      shell.draw.begin({ kind: 'new-project', project: project.value })
      openDrawing(session, shell)
    },
  }
}

function readSizes(texts: Readonly<Record<Side, string>>, wanted: readonly Side[], units: LengthUnit) {
  const sizes: Record<Side, Millimetres> = { width: 0, length: 0, height: 0 }
  const found: Problems = {}
  for (const side of wanted) {
    const read = readLength(texts[side], units, { leastMm: 0, moreThanLeast: true })
    if (read.ok) sizes[side] = read.value
    else found[side] = read.error
  }
  return { sizes, found }
}

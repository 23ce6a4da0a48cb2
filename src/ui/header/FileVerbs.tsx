import { useRef } from 'react'
import { setUnits } from '#state/commands/project.ts'
import { saveFile } from '#ui/files.ts'
import { DrawerVerb } from '#ui/header/DrawerVerb.tsx'
import { openFile } from '#ui/openFile.ts'
import { useDocument, useSession } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** Units, samples, and the project as a file. */
export function FileVerbs() {
  const session = useSession()
  const shell = useShell()
  const picker = useRef<HTMLInputElement>(null)
  return (
    <>
      <UnitsChoice />
      <fieldset className="verbs">
        <legend className="visually-hidden">Project</legend>
        <DrawerVerb drawer="samples">Samples</DrawerVerb>
        <DrawerVerb drawer="new-room">New room</DrawerVerb>
        <button type="button" className="verb" onClick={() => picker.current?.click()}>
          Open
        </button>
        <input
          ref={picker}
          type="file"
          accept=".json,application/json"
          aria-label="Open a project file"
          tabIndex={-1}
          hidden
          onChange={(event) => {
            const file = event.target.files?.[0]
            event.target.value = ''
            if (file) void openFile(session, shell, file)
          }}
        />
        <button type="button" className="verb" onClick={() => void saveFile(session, shell)}>
          Save
        </button>
      </fieldset>
    </>
  )
}

const UNITS: readonly { readonly unit: LengthUnit; readonly text: string; readonly title: string }[] = [
  { unit: 'ft-in', text: 'ft-in', title: 'Feet and inches' },
  { unit: 'mm', text: 'mm', title: 'Millimetres' },
]

function UnitsChoice() {
  const { document } = useSession()
  const units = useDocument((state) => state.project.units)
  return (
    <fieldset className="verbs units-choice">
      <legend className="visually-hidden">Units</legend>
      {UNITS.map(({ unit, text, title }) => (
        <button
          key={unit}
          type="button"
          className="verb"
          title={title}
          aria-pressed={units === unit}
          onClick={() => document.run(setUnits(unit))}
        >
          {text}
        </button>
      ))}
    </fieldset>
  )
}

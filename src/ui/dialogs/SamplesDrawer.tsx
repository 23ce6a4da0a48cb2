import { Drawer } from '#ui/dialogs/Drawer.tsx'
import { EarlierVersions } from '#ui/dialogs/EarlierVersions.tsx'
import { openText } from '#ui/files.ts'
import { SAMPLES } from '#ui/samples.ts'
import { useSession } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'

/** Finished rooms to look at; opening one is an undo step like any other. */
export function SamplesDrawer() {
  const session = useSession()
  const shell = useShell()
  return (
    <Drawer name="samples" title="Samples: invented demo data">
      <ul className="samples">
        {SAMPLES.map((sample, index) => (
          <li key={sample.id}>
            <button
              type="button"
              className="action plain"
              data-first={index === 0 ? '' : undefined}
              onClick={() => void openText(session, shell, { name: `the ${sample.name} sample`, text: sample.text })}
            >
              {sample.name}
            </button>
            <span>{sample.about}</span>
          </li>
        ))}
      </ul>
      <EarlierVersions />
      <p className="quiet">The open project gives way; Undo brings it back.</p>
    </Drawer>
  )
}

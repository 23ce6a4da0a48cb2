import type { Scheme } from '#analysis/scheme.ts'
import { deleteScheme, proposeScheme, renameScheme } from '#state/commands/schemes.ts'
import { Drawer } from '#ui/dialogs/Drawer.tsx'
import { EntryField } from '#ui/dialogs/EntryField.tsx'
import { useTyped } from '#ui/fields/useTyped.ts'
import { useDocument, useScheme, useSession } from '#ui/session.ts'
import { ok } from '#units/result.ts'

/** The scheme shown: its name, whether it is put forward, and its end. */
export function SchemeDrawer() {
  const { document } = useSession()
  const scheme = useScheme()
  const count = useDocument((state) => state.project.schemes.length)
  const isProposal = useDocument((state) => state.project.proposal === scheme.id)
  return (
    <Drawer name="scheme" title={`Scheme: ${scheme.name}`}>
      <div className="drawer-line">
        <SchemeName key={scheme.id} scheme={scheme} />
        <button
          type="button"
          className="verb"
          aria-pressed={isProposal}
          onClick={() => document.run(proposeScheme(isProposal ? null : scheme.id))}
        >
          Put forward to the client
        </button>
        <button
          type="button"
          className="verb"
          disabled={count === 1}
          onClick={() => document.run(deleteScheme(scheme.id))}
        >
          Delete this scheme
        </button>
      </div>
    </Drawer>
  )
}

function SchemeName({ scheme }: { readonly scheme: Scheme }) {
  const { document } = useSession()
  const typed = useTyped({
    value: scheme.name,
    show: (text) => text,
    read: (text) => ok(text),
    isSame: (a, b) => a === b,
    commit: (text) => {
      const outcome = document.run(renameScheme(scheme.id, text))
      return outcome.ok ? null : outcome.error.message
    },
    step: null,
  })
  return (
    <EntryField
      label="Name"
      name="scheme-name"
      text={typed.text}
      hint="Begin with its letter: A, B, C. Enter keeps it."
      error={typed.error}
      onText={typed.change}
      onBlur={typed.leave}
      onKeyDown={typed.press}
    />
  )
}

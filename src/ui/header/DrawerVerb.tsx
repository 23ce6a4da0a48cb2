import type { ReactNode } from 'react'
import { type Drawer, useShell, useShellState } from '#ui/shell.ts'

interface Props {
  readonly drawer: Drawer
  readonly children: ReactNode
}

/** A verb that opens a drawer under the header, and shuts it again. */
export function DrawerVerb({ drawer, children }: Props) {
  const { state } = useShell()
  const isOpen = useShellState((shell) => shell.drawer === drawer)
  return (
    <button
      type="button"
      className="verb"
      id={`open-${drawer}`}
      aria-expanded={isOpen}
      aria-controls={`drawer-${drawer}`}
      onClick={() => state.setState({ drawer: isOpen ? null : drawer })}
    >
      {children}
    </button>
  )
}

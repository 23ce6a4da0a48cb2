import { type ReactNode, useEffect, useRef } from 'react'
import { type Drawer as DrawerName, useShell } from '#ui/shell.ts'

interface Props {
  readonly name: DrawerName
  readonly title: string
  readonly children: ReactNode
}

/** A strip under the header: takes the focus when it opens, gives it back when it shuts. */
export function Drawer({ name, title, children }: Props) {
  const { state } = useShell()
  const box = useRef<HTMLElement>(null)
  useEffect(() => {
    const element = box.current
    element?.querySelector<HTMLElement>('input, [data-first]')?.focus()
    return () => {
      // The focus went with the drawer: it returns to the verb that opened it.
      const isLost = document.activeElement === document.body || element?.contains(document.activeElement)
      if (isLost) document.getElementById(`open-${name}`)?.focus()
    }
  }, [name])
  return (
    <section
      ref={box}
      id={`drawer-${name}`}
      className="drawer"
      aria-label={title}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        event.nativeEvent.stopPropagation()
        state.setState({ drawer: null })
      }}
    >
      <div className="drawer-head">
        <h2>{title}</h2>
        <button type="button" className="verb" onClick={() => state.setState({ drawer: null })}>
          Close
        </button>
      </div>
      {children}
    </section>
  )
}
